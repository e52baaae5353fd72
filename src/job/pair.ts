import type { Finding } from "#base/findings.ts";
import type { Last } from "#last/last.ts";
import type { LineRules, Lines } from "#lines/lines.ts";
import type { Piece } from "#pieces/piece.ts";
import type { PieceRules, PieceSettings } from "#pieces/settings.ts";
import type { FlatBottom, FlatShell, Shell } from "#shell/shell.ts";
import type { Job } from "./job.ts";

/** Everything derived from one job: the value that the app shows and the sheets print. */
export interface Pair {
  readonly job: Job;
  /** What is written on every piece: the maker's title, and her size or the nominal one of the last. */
  readonly labels: { readonly title: string; readonly size: string };
  readonly last: Last;
  readonly lineRules: LineRules;
  readonly pieceRules: PieceRules;
  readonly pieceSettings: PieceSettings;
  readonly lines: Lines;
  readonly shell: Shell;
  /** Topline of both halves, on the last and on the flat pattern, mm. */
  readonly toplineMm: { readonly onLast: number; readonly flat: number };
  readonly flat: FlatShell;
  /** The bottom inside the feather line, laid flat; net. */
  readonly bottom: FlatBottom;
  /** All pieces of both shoes; a left piece is the exact mirror of its right twin. */
  readonly pieces: readonly Piece[];
  /** Findings of all stages, in the order of the work. */
  readonly findings: readonly Finding[];
  /** Time of each stage, ms; empty where no clock was handed in. */
  readonly timesMs: Readonly<Record<string, number>>;
}
