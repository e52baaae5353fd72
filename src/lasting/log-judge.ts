import { finding, type Finding } from "#base/findings.ts";
import type { Side } from "#last/last.ts";
import { endNames, type Asked, type Measured } from "./log.ts";
import { dimensions, marginTolerance, tolerances, type Dimension } from "./log-tolerances.ts";

export type Verdict = "inside" | "just inside" | "outside";

/** One measure held to its tolerance. */
export interface Judged {
  readonly what: Dimension | "marginMm";
  /** Number of the draft, for a margin. */
  readonly draft?: number;
  /** Measured minus asked, or left minus right, mm. */
  readonly offMm: number;
  readonly toleranceMm: number;
  readonly verdict: Verdict;
  /** How far outside; 0 where it is inside. */
  readonly beyondMm: number;
}

/** What was judged, the worst of it, and every row as a sentence. */
export interface Judgement {
  readonly rows: readonly Judged[];
  /** Nothing where nothing could be compared. */
  readonly verdict?: Verdict;
  readonly findings: readonly Finding[];
}

/** Beyond this share of the tolerance it is only just inside. */
const justShare = 0.75;
/** A tape is read to a tenth at best, and asked and off are shown in tenths: what is judged is what is shown. */
const tenths = (mm: number): number => Math.round(10 * mm) / 10;

/** One shoe against what was asked of it. */
export function judgeShoe(side: Side, measured: Measured, asked: Asked): Judgement {
  const rows = endNames.flatMap((what) => judged({ what }, measured[what], asked[what] === undefined ? undefined : tenths(asked[what]), tolerances[what].mm));
  return judgement(rows, (row) => finding(row.verdict === "outside" ? "log-shoe-outside" : "log-shoe-inside", { side, ...row }));
}

/** The left shoe against the right one. */
export function judgePair(left: Measured, right: Measured): Judgement {
  const drafts = Object.keys(left.marginsMm ?? {}).sort((a, b) => Number(a) - Number(b));
  const rows = [
    ...dimensions.flatMap((what) => judged({ what }, left[what], right[what], tolerances[what].mm)),
    ...drafts.flatMap((key) => judged({ what: "marginMm", draft: Number(key) }, left.marginsMm?.[key], right.marginsMm?.[key], marginTolerance.mm)),
  ];
  return judgement(rows, (row) => finding(row.verdict === "outside" ? "log-pair-outside" : "log-pair-inside", row));
}

function judged(what: Pick<Judged, "what" | "draft">, isMm: number | undefined, wantMm: number | undefined, toleranceMm: number): readonly Judged[] {
  if (isMm === undefined || wantMm === undefined) return [];
  const offMm = isMm - wantMm, far = tenths(Math.abs(offMm));
  const verdict = far > toleranceMm ? "outside" : far > justShare * toleranceMm ? "just inside" : "inside";
  return [{ ...what, offMm, toleranceMm, verdict, beyondMm: verdict === "outside" ? far - toleranceMm : 0 }];
}

const grave: readonly Verdict[] = ["inside", "just inside", "outside"];

function judgement(rows: readonly Judged[], say: (row: Judged) => Finding): Judgement {
  const worst = Math.max(...rows.map(({ verdict }) => grave.indexOf(verdict)));
  return { rows, ...(rows.length > 0 && { verdict: grave[worst]! }), findings: rows.map(say) };
}
