import { must } from "#base/bug.ts";
import type { Law } from "#leather/law.ts";
import type { LaidPanels } from "#shell/panels.ts";
import type { FlatShell, Shell } from "#shell/shell.ts";

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

/** The upper in one piece, its back seam sewn. */
export function wholeUpper({ shell: over, onLast, uv }: FlatShell): CutUpper {
  const { backMedial, backLateral } = over.edges;
  must(backMedial.length === backLateral.length, "the two banks of the back have equally many points");
  return {
    over,
    onLast,
    triangles: over.mesh.triangles,
    flat: uv,
    source: Uint32Array.from({ length: uv.length / 2 }, (_, v) => v),
    sewn: Uint32Array.from(pairsOf(backMedial, backLateral)),
  };
}

/** Room between the flat panels, which lie side by side, mm. */
const betweenMm = 20;

/**
 * The upper in panels, laid side by side and sewn together. Each keeps its own frame but for a shift across, so that +x runs from back to
 * toe on all of them: along the centre line on a panel that has it, along the chord of the feather line on a quarter.
 */
export function panelledUpper({ opened: { over, onLast }, panels }: LaidPanels): CutUpper {
  const flat: number[] = [], source: number[] = [], triangles: number[] = [], sewn: number[] = [];
  const first = new Map<number, number>();
  let floor = 0;
  for (const { panel, uv } of panels) {
    const from = source.length, [low, high] = reachAcross(uv), shift = from === 0 ? 0 : floor + betweenMm - low;
    floor = high + shift;
    for (const v of panel.over.triangles) triangles.push(from + v);
    panel.source.forEach((v, k) => {
      flat.push(uv[2 * k]!, uv[2 * k + 1]! + shift);
      source.push(v);
      const met = first.get(v);
      if (met === undefined) first.set(v, from + k);
      else sewn.push(met, from + k);
    });
  }
  for (const [v, w] of pairs(over.edges.backMedial, over.edges.backLateral)) {
    const a = first.get(v), b = first.get(w);
    // Where the back is in one with its panel, only one of the banks is in use.
    if (a !== undefined && b !== undefined) sewn.push(a, b);
  }
  return { over, onLast, triangles: Uint32Array.from(triangles), flat: Float64Array.from(flat), source: Uint32Array.from(source), sewn: Uint32Array.from(sewn) };
}

const pairs = (a: Uint32Array, b: Uint32Array): readonly (readonly [number, number])[] => Array.from(a, (v, k) => [v, b[k]!] as const).filter(([v, w]) => v !== w);
const pairsOf = (a: Uint32Array, b: Uint32Array): readonly number[] => pairs(a, b).flat();

function reachAcross(uv: Float64Array): readonly [number, number] {
  let low = Infinity, high = -Infinity;
  for (let i = 1; i < uv.length; i += 2) {
    low = Math.min(low, uv[i]!);
    high = Math.max(high, uv[i]!);
  }
  return [low, high];
}

/** For each vertex of the shell its first vertex in the sheet; the outer bank of a back that is not open counts as the inner one; −1 where there is none. */
export function sheetVertices({ over, source }: Pick<CutUpper, "over" | "source">): Int32Array {
  const out = new Int32Array(over.mesh.positions.length / 3).fill(-1);
  for (let k = source.length - 1; k >= 0; k--) out[source[k]!] = k;
  for (const [v, w] of pairs(over.edges.backMedial, over.edges.backLateral)) if (out[w] === -1) out[w] = out[v]!;
  return out;
}
