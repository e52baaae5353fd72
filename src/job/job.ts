import type { LastMeasurements } from "#last/measured.ts";
import type { Side } from "#last/last.ts";
import type { LineSettings } from "#lines/lines.ts";
import type { PieceSettings } from "#pieces/settings.ts";

/** Where the last comes from. A scan's bytes lie beside the job under `file`. */
export type LastSource =
  | { readonly from: "measures"; readonly measures: LastMeasurements }
  | { readonly from: "scan"; readonly file: string; readonly side?: Side };

/** All that the maker decided, and nothing that can be derived. Settings not named follow the rules of construction. */
export interface Job {
  readonly format: "lastwise job";
  readonly version: 1;
  readonly title: string;
  /** Size as the maker says it, e.g. "38". */
  readonly size: string;
  readonly last: LastSource;
  readonly lines: Partial<LineSettings>;
  readonly springMm: number;
  readonly pieces: Partial<PieceSettings>;
  readonly paper: "A4" | "Letter";
}
