import type { Half } from "#lines/feather.ts";
import type { Mesh } from "#mesh/mesh.ts";
import type { Finding } from "#base/findings.ts";
import type { StrainSummary } from "./shell.ts";

/** What an edge of a panel is. "end": where a part was cut off that is no seam of the upper, as the ends of a heel pocket. */
export type PanelRole = "feather" | "topline" | "back" | "inner waist" | "side" | "end";

export type PanelName = "whole" | "vamp" | "inner quarter" | "outer quarter" | "heel";

/** One edge of a panel between two corners, as a row of its vertices. */
export interface PanelEdge {
  readonly role: PanelRole;
  /** Which half of the shoe it lies in; one that lies in both has none. */
  readonly half?: Half;
  /** The seam or line it is one bank of. */
  readonly seam?: string;
  readonly vertices: Uint32Array;
}

/** A connected part of the shell: the same triangles over what lies beneath the upper and on the last itself, mm. */
export interface Panel {
  readonly name: PanelName;
  readonly over: Mesh;
  readonly onLast: Mesh;
  /**
   * Feather line first, then on round: counter-clockwise as seen from outside on a right last, clockwise on a left one, so that both name
   * their edges in the same order.
   */
  readonly edges: readonly PanelEdge[];
  /** Toe → throat, where it has the centre line. */
  readonly centre?: Uint32Array;
  /** Seat → topline, where the back runs closed through it. */
  readonly back?: Uint32Array;
  /** For each vertex its number in the shell that was opened (see OpenedShell). */
  readonly source: Uint32Array;
}

/** A panel laid flat by itself. Where it lies: docs/method/panels.md. */
export interface LaidPanel {
  readonly panel: Panel;
  /** x0 y0 … mm, one pair a vertex; seen from outside. */
  readonly uv: Float64Array;
  readonly stretchMax: Float64Array;
  readonly stretchMin: Float64Array;
  readonly strain: StrainSummary;
  readonly findings: readonly Finding[];
}
