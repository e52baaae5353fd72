import type { Finding } from "#base/findings.ts";
import type { Last } from "#last/last.ts";
import type { Foretold } from "#lasting/foretold.ts";
import type { Lines } from "#lines/lines.ts";
import type { Making } from "#making/making.ts";
import type { BottomMade } from "#pieces/bottom/made.ts";
import type { PartChoices } from "#pieces/choices.ts";
import type { Piece, Strip } from "#pieces/piece.ts";
import type { PieceSettings } from "#pieces/settings.ts";
import type { BeneathRow } from "#shell/girths.ts";
import type { SeamLine } from "#shell/seam-line.ts";
import type { ShellSettings, ToplineEdge } from "#shell/settings.ts";
import type { FlatShell } from "#shell/shell.ts";
import type { TapedShell, TracedPicture } from "#tape/taped-shell.ts";
import type { Stitched } from "#pieces/stitching.ts";
import type { SheetChoices } from "./choices.ts";
import type { CorrectedFor } from "./corrected.ts";
import type { Tried } from "./tried-report.ts";

/** What the sheets of any pair are made from: its pieces, and how the maker calls it. */
interface AnyInput {
  readonly title: string;
  /** Size as the maker says it. */
  readonly size: string;
  readonly choices: SheetChoices;
  /** All pieces of both shoes. */
  readonly pieces: readonly Piece[];
  /** What is cut off a roll by length, for the whole pair. */
  readonly strips: readonly Strip[];
  /** Lines of stitches on one shoe. */
  readonly stitching: readonly Stitched[];
  /** What to buy, what it costs, and the steps. */
  readonly making: Making;
  /** What was decided about the parts by word or by yes and no. */
  readonly parts: PartChoices;
  /** How the topline is made. */
  readonly edge: ToplineEdge;
  readonly pieceSettings: PieceSettings;
  /** What the bottom is built of, to be told in the report; nothing where no bottom was traced. */
  readonly made?: BottomMade;
  readonly findings: readonly Finding[];
  /** Time of each stage so far, ms; empty where no clock was handed in. */
  readonly timesMs: Readonly<Record<string, number>>;
}

/** One pair on a last, with everything derived. */
export interface LastInput extends AnyInput {
  readonly from: "last";
  readonly last: Last;
  readonly lines: Lines;
  readonly shellSettings: ShellSettings;
  readonly beneath: readonly BeneathRow[];
  readonly flat: FlatShell;
  /** Where the pattern was tried out. */
  readonly tried?: Tried;
  /** Seams of another cut than that at the back alone, for their feet on the last. */
  readonly seams?: readonly SeamLine[];
  /** What was foretold of lasting, where it was worked out. */
  readonly foretold?: Foretold;
  /** What the pieces were corrected for; nothing where they are cut as they lie on the last. */
  readonly corrected?: CorrectedFor;
  /** The upper's leather as the maker calls it, where it was said. */
  readonly leatherName?: string;
}

/** One pair on a taped pattern. */
export interface TapeInput extends AnyInput {
  readonly from: "tape";
  readonly tape: TapedShell;
  readonly traced: readonly TracedPicture[];
}

export type SheetInput = LastInput | TapeInput;
