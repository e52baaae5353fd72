import type { LastMeasurements } from "#last/measured.ts";
import type { SaidOfScan } from "#last/said.ts";
import type { LastingChoices } from "#lasting/settings.ts";
import type { ShoeEntry } from "#lasting/log.ts";
import type { LeatherSaid, UpperLayer } from "#leather/leather.ts";
import type { LineSettings } from "#lines/lines.ts";
import type { MakingSaid } from "#making/said.ts";
import type { PartChoices } from "#pieces/choices.ts";
import type { PieceSettings } from "#pieces/settings.ts";
import type { SheetChoices } from "#sheets/choices.ts";
import type { ShellSettings } from "#shell/settings.ts";
import type { TapeSaid } from "#tape/said.ts";

/** Drawings of the last on paper, photographed or scanned with the card in view; names of pictures beside the job. */
export interface OutlineFiles {
  /** Drawn round the bottom, standing on it. */
  readonly bottom?: string;
  /** Drawn round the last lying on its side. */
  readonly side?: string;
  /** What the maker's own rule reads on the card's printed bar, mm. */
  readonly barMm?: number;
}

/** A second last of the same pair, to be compared with the first. */
export interface OtherLast {
  readonly file: string;
  readonly said?: SaidOfScan;
}

/** Where the last comes from. Scans and pictures lie beside the job under the names said here. */
export type LastSource =
  | { readonly from: "measures"; readonly measures: LastMeasurements; readonly outlines?: OutlineFiles }
  | { readonly from: "scan"; readonly file: string; readonly said?: SaidOfScan; readonly other?: OtherLast }
  | { readonly from: "tape"; readonly tape: TapeSaid };

/** All that the maker decided, and nothing that can be derived. Settings not named follow the rules of construction. */
export interface Job {
  readonly format: "lastwise job";
  readonly version: 6;
  readonly title: string;
  /** Size as the maker says it, e.g. "38". */
  readonly size: string;
  readonly last: LastSource;
  readonly lines: Partial<LineSettings>;
  readonly shell: Partial<ShellSettings>;
  readonly pieces: Partial<PieceSettings>;
  readonly parts: Partial<PartChoices>;
  /** What is said about the leathers of the upper and its lining. */
  readonly leather: Partial<Record<UpperLayer, LeatherSaid>>;
  readonly lasting: Partial<LastingChoices>;
  /** What was measured on the shoes made so far, in the order in which it was written down. */
  readonly log: readonly ShoeEntry[];
  /** Pairs, prices, shelf, hours and sessions, as they were written. */
  readonly making: MakingSaid;
  readonly sheets: Partial<SheetChoices>;
}
