import { bottomSentences } from "./sentences/bottom.ts";
import { calendarSentences } from "./sentences/calendar.ts";
import { checkSentences } from "./sentences/check.ts";
import { compareSentences } from "./sentences/compare.ts";
import { correctSentences } from "./sentences/correct.ts";
import { extraSentences } from "./sentences/extras.ts";
import { footSentences } from "./sentences/foot.ts";
import { jobSentences } from "./sentences/job.ts";
import { lastSentences } from "./sentences/last.ts";
import { lastingSentences } from "./sentences/lasting.ts";
import { leatherSentences } from "./sentences/leather.ts";
import { liningSentences } from "./sentences/linings.ts";
import { lineSentences } from "./sentences/lines.ts";
import { loopSentences } from "./sentences/loop.ts";
import { madeSentences } from "./sentences/made.ts";
import { meshSentences } from "./sentences/mesh.ts";
import { moneySentences } from "./sentences/money.ts";
import { needsSentences } from "./sentences/needs.ts";
import { panelSentences } from "./sentences/panels.ts";
import { photoSentences } from "./sentences/photo.ts";
import { pieceSentences } from "./sentences/pieces.ts";
import { reliefSentences } from "./sentences/relief.ts";
import { sheetSentences } from "./sentences/sheets.ts";
import { shellSentences } from "./sentences/shell.ts";
import { tapeSentences } from "./sentences/tape.ts";
import { upperSentences } from "./sentences/upper.ts";
import type { Severity } from "./severity.ts";

/** A finding is data with a code; its sentence is made here and nowhere else. */
const catalogue = {
  ...photoSentences,
  ...meshSentences,
  ...lastSentences,
  ...compareSentences,
  ...footSentences,
  ...madeSentences,
  ...lineSentences,
  ...liningSentences,
  ...shellSentences,
  ...panelSentences,
  ...checkSentences,
  ...reliefSentences,
  ...pieceSentences,
  ...leatherSentences,
  ...lastingSentences,
  ...correctSentences,
  ...loopSentences,
  ...bottomSentences,
  ...upperSentences,
  ...extraSentences,
  ...needsSentences,
  ...moneySentences,
  ...calendarSentences,
  ...sheetSentences,
  ...jobSentences,
  ...tapeSentences,
};
type Catalogue = typeof catalogue;
export type FindingCode = keyof Catalogue;
export type FindingData<C extends FindingCode> = Parameters<Catalogue[C]["say"]>[0];
export type Finding = {
  [C in FindingCode]: {
    readonly code: C;
    readonly data: FindingData<C>;
    /** Where it speaks of, in the last's frame in mm, when there is such a place. */
    readonly at?: readonly [number, number, number];
  };
}[FindingCode];

/** Makes a finding; `at` is a point in the last's frame, mm. */
export function finding<C extends FindingCode>(code: C, data: FindingData<C>, at?: readonly [number, number, number]): Finding {
  return (at ? { code, data, at } : { code, data }) as Finding;
}

export function severityOf(f: Finding): Severity {
  return catalogue[f.code].severity;
}

/** The sentence for the maker: what, where, how much, what to do. */
export function explain(f: Finding): string {
  return (catalogue[f.code].say as (data: unknown) => string)(f.data);
}
