import type { Finding } from "#base/findings.ts";
import type { Mesh } from "#mesh/mesh.ts";

/**
 * Vertex lists of the shell's named edges. Feather halves run seat → toe, back edges seat → topline, topline halves
 * back → throat, the centre (inside the shell) toe → throat. End points are shared between neighbouring edges; the two back
 * edges are the two banks of the opening at the back, at equal places in space.
 */
export interface ShellEdges {
  readonly featherMedial: Uint32Array;
  readonly featherLateral: Uint32Array;
  readonly backMedial: Uint32Array;
  readonly backLateral: Uint32Array;
  readonly toplineMedial: Uint32Array;
  readonly toplineLateral: Uint32Array;
  readonly centre: Uint32Array;
}

/** The upper's surface lifted off the last: a disk, open along the back, in the last's frame, mm. */
export interface Shell {
  readonly mesh: Mesh;
  readonly edges: ShellEdges;
}

/**
 * Change from the flat piece to the last, as shares: 0.02 is 2 %. `p50`, `p95` and `max` count the larger principal change of each
 * place, whichever way; `give` is how far the leather must stretch at most and `gather` how far it must be gathered at most (at the
 * toe's feather edge, where it is pleated under).
 */
export interface StrainSummary {
  readonly p50: number;
  readonly p95: number;
  readonly max: number;
  readonly give: number;
  readonly gather: number;
}

/** No change at all. */
export const noStrain: StrainSummary = { p50: 0, p95: 0, max: 0, give: 0, gather: 0 };

/** One half of the topline, mm: on the last itself, over what lies beneath the upper, and on the card. */
export interface ToplineTension {
  readonly onLastMm: number;
  readonly overMm: number;
  readonly flatMm: number;
  /** The most that any place of it must stretch from the card to where it lies, as a share. */
  readonly mostStretch: number;
  /** How much shorter still than asked its edges were asked to be, since the shell gives less, mm: where to begin for a shell much like it. */
  readonly extraMm: number;
}

/**
 * The shell laid flat. `uv` x0 y0 … mm, one pair a vertex of the shell; origin at the toe point, centre line from the throat
 * to the toe along +x, seen from the grain side as the last is seen from above (medial +y on a right one).
 */
export interface FlatShell {
  /** What was laid flat: over lining, stiffener and toe puff. */
  readonly shell: Shell;
  /** The same vertices and edges on the last itself. */
  readonly onLast: Shell;
  readonly uv: Float64Array;
  /** Larger and smaller principal stretch of each triangle, flat → last. */
  readonly stretchMax: Float64Array;
  readonly stretchMin: Float64Array;
  readonly strain: StrainSummary;
  /** How far the heel ends were swung together from where they lie of themselves, mm at the topline. */
  readonly springMm: number;
  /** Each half of the topline. */
  readonly tension: { readonly medial: ToplineTension; readonly lateral: ToplineTension };
  /** The stretch without spring and tension: what `strain` has grown by against it is their price. */
  readonly unsprung: StrainSummary;
  readonly findings: readonly Finding[];
}

/**
 * The last's bottom inside the feather line, a disk, mm. `loop` are its boundary vertices from the seat point over the medial
 * side to the toe point and back over the lateral side; `toeIndex` is the place of the toe point in it.
 */
export interface Bottom {
  readonly mesh: Mesh;
  readonly loop: Uint32Array;
  readonly toeIndex: number;
}

/**
 * The bottom laid flat, seen from above (through the foot): origin at the seat point, toe point on +x, +y to the left, so
 * medial is +y on a right one.
 */
export interface FlatBottom {
  readonly bottom: Bottom;
  readonly uv: Float64Array;
  readonly strain: StrainSummary;
}
