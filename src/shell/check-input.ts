import type { Last } from "#last/last.ts";
import type { FlatShell } from "./shell.ts";

/** What the check on the last is made from. */
export interface CheckInput {
  readonly last: Last;
  /** What the pieces are cut from. */
  readonly flat: FlatShell;
  /** uv of the same shell as it lies of itself, without spring and tension. */
  readonly freeUv: Float64Array;
  /** The same laid flat with the same settings on about `checkTriangles` triangles: this card is laid back on the last. */
  readonly coarse: FlatShell;
  /** How much shorter the topline was asked to be than on the last, as a share. */
  readonly toplineShorter: number;
}
