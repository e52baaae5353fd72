import type { Finding } from "#base/findings.ts";
import type { LastComparison } from "#last/compare.ts";
import type { Last } from "#last/last.ts";
import type { LastingChoices } from "#lasting/settings.ts";
import type { LineRules, Lines } from "#lines/lines.ts";
import type { BottomMade } from "#pieces/bottom/made.ts";
import type { PartChoices } from "#pieces/choices.ts";
import type { Ground, Piece, Strip } from "#pieces/piece.ts";
import type { PieceRules, PieceSettings } from "#pieces/settings.ts";
import type { Stitched } from "#pieces/stitching.ts";
import type { LaidPanels } from "#shell/panels.ts";
import type { BeneathRow } from "#shell/girths.ts";
import type { ShellRules, ShellSettings } from "#shell/settings.ts";
import type { SeamLine } from "#shell/seam-line.ts";
import type { FlatBottom, FlatShell, Shell } from "#shell/shell.ts";
import type { TapedShell, TracedPicture } from "#tape/taped-shell.ts";
import type { CorrectedFlat } from "./corrected.ts";
import type { Job } from "./job.ts";
import type { PairLeathers } from "./leathers.ts";

/** What every pair has, wherever it comes from. */
interface AnyPair {
  readonly job: Job;
  /** What is written on every piece: the maker's title, and her size or the nominal one of the last. */
  readonly labels: { readonly title: string; readonly size: string };
  readonly pieceRules: PieceRules;
  readonly pieceSettings: PieceSettings;
  /** All pieces of both shoes; a left piece is the exact mirror of its right twin. */
  readonly pieces: readonly Piece[];
  readonly parts: PartChoices;
  /** What is cut off a roll by length, for the whole pair. */
  readonly strips: readonly Strip[];
  /** Every line of stitches of one shoe; both shoes have them alike. */
  readonly stitching: readonly Stitched[];
  /** What the bottom is built of; nothing where no bottom was traced. */
  readonly made?: BottomMade;
  /** Where the flat sheets of the pieces lie on the last; none on a taped pattern. */
  readonly grounds: readonly Ground[];
  /** The seams of another cut than that at the back alone, as they lie on the last. */
  readonly seams?: readonly SeamLine[];
  /** Findings of all stages, in the order of the work. */
  readonly findings: readonly Finding[];
  /** Time of each stage, ms; empty where no clock was handed in. */
  readonly timesMs: Readonly<Record<string, number>>;
}

/** A second last in a frame of its own, and how it differs from the first. */
export interface OtherHeld {
  readonly last: Last;
  readonly comparison: LastComparison;
}

/** A pair on a last, scanned or made from measures. */
export interface LastPair extends AnyPair {
  readonly from: "last";
  readonly last: Last;
  /** The other last of the pair, where the job names one, held against this one. */
  readonly other?: OtherHeld;
  /** The drawings that a made last was shaped after, as they were traced. */
  readonly traces?: readonly TracedPicture[];
  readonly lineRules: LineRules;
  readonly shellRules: ShellRules;
  readonly shellSettings: ShellSettings;
  readonly lines: Lines;
  readonly shell: Shell;
  /** Topline of both halves, on the last and on the flat pattern, mm. */
  readonly toplineMm: { readonly onLast: number; readonly flat: number };
  /** What lining, stiffener and toe puff add to each length of the upper. */
  readonly beneath: readonly BeneathRow[];
  readonly flat: FlatShell;
  /** The same shell as it lies of itself, without spring and tension: x0 y0 … mm, in no frame of its own. */
  readonly freeUv: Float64Array;
  readonly lasting: LastingChoices;
  readonly leathers: PairLeathers;
  /** The upper opened along the seams of its cut and laid flat, where that was asked for. */
  readonly panels?: LaidPanels;
  /** The flat corrected for the leather, where the pieces are to be cut from it. */
  readonly corrected?: CorrectedFlat;
  /** The bottom inside the feather line, laid flat; net. */
  readonly bottom: FlatBottom;
}

/** A pair on the maker's own taped pattern: there is no last, so nothing that would have to be measured on one. */
export interface TapedPair extends AnyPair {
  readonly from: "tape";
  readonly tape: TapedShell;
  /** Every picture of the job with what was traced in it, in the order of the job. */
  readonly traced: readonly TracedPicture[];
}

/** Everything derived from one job: the value that the app shows and the sheets print. */
export type Pair = LastPair | TapedPair;
