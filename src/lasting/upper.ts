import type { Law } from "#leather/law.ts";
import type { Shell } from "#shell/shell.ts";

/** The upper as it was cut, one sheet or several joined by seams, and where each of its vertices should come to lie. */
export interface CutUpper {
  /** The surface over what lies beneath the upper, with its named edges, and the same vertices on the last itself. */
  readonly over: Shell;
  readonly onLast: Shell;
  /** Corners of the flat sheet or sheets. */
  readonly triangles: Uint32Array;
  /** x0 y0 … mm, net; +x from back to toe. Sheets of their own do not touch. */
  readonly flat: Float64Array;
  /** For each vertex of the sheet its number in the shell: the same twice where a seam joins two. */
  readonly source: Uint32Array;
  /** Vertices sewn together, a0 b0 a1 b1 …: the back seam, and the seams between panels. */
  readonly sewn: Uint32Array;
}

/** Upper, lining and tape as one membrane. */
export interface Fabric {
  /** Upper and lining together, in axes of the flat sheet: 1 along its +x. */
  readonly law: Law;
  /** Bending stiffness per width, N·mm. */
  readonly bend: number;
  /** Resistance of the topline's tape to being stretched by its own length, N; 0 where there is none. */
  readonly tapeN: number;
  /** Green's strain down to which the leather gathers; beyond it lies in pleats. */
  readonly gatherLimit: number;
  /** Stretch above which the grain of the upper may crack, and at which it tears, as shares. */
  readonly grainLimit: number;
  readonly breakLimit: number;
}
