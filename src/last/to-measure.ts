import type { Finding } from "#base/findings.ts";
import type { Mesh } from "#mesh/mesh.ts";
import type { FeatherLine, Landmarks, Last, Placement, Side } from "./last.ts";

/** What is measured: a mesh in the last's frame (mm) and its feather line, which starts at the seat point, medial side first. */
export interface ToMeasure {
  readonly name: string;
  readonly source: Last["source"];
  readonly side: Side;
  readonly mesh: Mesh;
  readonly placement: Placement;
  readonly feather: FeatherLine;
  /** Roughness of the surface, mm; 0 on a made one. */
  readonly noiseMm?: number;
  /** Landmarks that the maker placed, in the frame of the mesh; they go before what is found, and what depends on them follows. */
  readonly said?: Partial<Landmarks>;
  readonly findings: readonly Finding[];
}
