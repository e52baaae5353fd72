import type { Last } from "#last/last.ts";
import type { LineRules, LineSettings } from "#lines/lines.ts";
import type { ShellRules, ShellSettings } from "./settings.ts";
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
  /** What the maker asked for, and the rules for this last, leather and edge: a change is proposed only as far as they let it. */
  readonly asked: { readonly lines: LineSettings; readonly shell: ShellSettings };
  readonly rules: { readonly lines: LineRules; readonly shell: ShellRules };
}
