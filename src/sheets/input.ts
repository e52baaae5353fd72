import type { Finding } from "#base/findings.ts";
import type { Last } from "#last/last.ts";
import type { Lines } from "#lines/lines.ts";
import type { Piece } from "#pieces/piece.ts";
import type { PieceSettings } from "#pieces/settings.ts";
import type { FlatShell } from "#shell/shell.ts";
import type { PaperName } from "./paper.ts";

/** What the sheets are made from: one pair with everything derived, and how the maker calls it. */
export interface SheetInput {
  readonly title: string;
  /** Size as the maker says it. */
  readonly size: string;
  readonly paper: PaperName;
  readonly last: Last;
  readonly lines: Lines;
  readonly flat: FlatShell;
  /** All pieces of both shoes. */
  readonly pieces: readonly Piece[];
  readonly pieceSettings: PieceSettings;
  readonly findings: readonly Finding[];
  /** Time of each stage so far, ms; empty where no clock was handed in. */
  readonly timesMs: Readonly<Record<string, number>>;
}
