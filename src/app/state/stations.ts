import { severityOf, type Finding } from "#base/findings.ts";
import { bottomSentences } from "#base/sentences/bottom.ts";
import { calendarSentences } from "#base/sentences/calendar.ts";
import { checkSentences } from "#base/sentences/check.ts";
import { correctSentences } from "#base/sentences/correct.ts";
import { extraSentences } from "#base/sentences/extras.ts";
import { lastingSentences } from "#base/sentences/lasting.ts";
import { leatherSentences } from "#base/sentences/leather.ts";
import { lineSentences } from "#base/sentences/lines.ts";
import { liningSentences } from "#base/sentences/linings.ts";
import { loopSentences } from "#base/sentences/loop.ts";
import { moneySentences } from "#base/sentences/money.ts";
import { needsSentences } from "#base/sentences/needs.ts";
import { panelSentences } from "#base/sentences/panels.ts";
import { pieceSentences } from "#base/sentences/pieces.ts";
import { reliefSentences } from "#base/sentences/relief.ts";
import { sheetSentences } from "#base/sentences/sheets.ts";
import { shellSentences } from "#base/sentences/shell.ts";
import { upperSentences } from "#base/sentences/upper.ts";
import type { Pair, TapedPair } from "#job/pair.ts";
import { sheetChoicesFrom } from "#sheets/choices.ts";
import type { Making } from "#making/making.ts";
import { meanLength } from "#tape/taped-shell.ts";
import { makingWords } from "./making-words.ts";
import { mm, percent, say } from "./numbers.ts";
import { kindsOf } from "./piece-kinds.ts";
import { lastingWords, leatherWords } from "./bench-words.ts";
import { paperWords } from "./sheet-words.ts";

/** The stations in the order of the work. */
export const stations = ["Last", "Lines", "Shell", "Leather", "Lasting", "Pieces", "Making", "Sheets"] as const;
export type Station = (typeof stations)[number];

const later = ["Lines", "Shell", "Leather", "Lasting", "Pieces", "Making", "Sheets"] as const;
const catalogues: Readonly<Record<(typeof later)[number], readonly object[]>> = {
  Lines: [lineSentences],
  Shell: [shellSentences, reliefSentences, checkSentences],
  Leather: [leatherSentences],
  Lasting: [lastingSentences, correctSentences, loopSentences],
  Pieces: [pieceSentences, panelSentences, upperSentences, liningSentences, bottomSentences, extraSentences],
  Making: [needsSentences, moneySentences, calendarSentences],
  Sheets: [sheetSentences],
};

/** What speaks of no later station is about the last and what was read for it. */
export const stationOfFinding = (f: Finding): Station => later.find((s) => catalogues[s].some((c) => f.code in c)) ?? "Last";

/** Findings that belong to one station. */
export function findingsAt(station: Station, findings: readonly Finding[]): readonly Finding[] {
  return findings.filter((f) => stationOfFinding(f) === station);
}

/** Findings that have to be looked at before anything is cut. */
export const looksAmong = (findings: readonly Finding[]): readonly Finding[] => findings.filter((f) => severityOf(f) === "look");

export const looksWords = (n: number): string => (n === 1 ? "one thing" : `${n} things`);

/** The number of a finding's pin in the picture: those that speak of a place are counted from 1. */
export function pinNumber(all: readonly Finding[], f: Finding): number {
  return all.filter((g) => g.at).indexOf(f) + 1;
}

/** How much there is to look at, e.g. "one thing to look at"; nothing where there is not. */
export function lookOf(station: Station, findings: readonly Finding[]): string | undefined {
  const looks = looksAmong(findingsAt(station, findings)).length;
  return looks === 0 ? undefined : `${looksWords(looks)} to look at`;
}

/** How a station stands, in words, e.g. "EU 38, right, from a scan". */
export function whatOf(station: Station, pair: Pair, making: Making | undefined, sheetsReady: boolean): string {
  if (station === "Making") return makingWords(making);
  if (pair.from === "tape") return taped(station, pair, sheetsReady);
  const { last, lines, flat, toplineMm } = pair;
  const s = lines.settings;
  switch (station) {
    case "Last":
      return `${pair.labels.size}, ${last.side}, from ${last.source === "scan" ? "a scan" : "measures"}`;
    case "Lines":
      return `throat ${say(s.throatDepthMm)}, back ${say(s.backHeightMm)}, sides ${say(s.sideHeightMedialMm)} and ${mm(s.sideHeightLateralMm)}`;
    case "Shell": {
      const shorter = 1 - toplineMm.flat / toplineMm.onLast;
      const topline = Math.abs(shorter) < 0.0005 ? "topline as on the last" : `topline ${percent(Math.abs(shorter), 2)} ${shorter > 0 ? "shorter" : "longer"}`;
      return `${topline}, nearly all within ${percent(flat.strain.p95)}`;
    }
    default:
      return anyPair(station, pair, sheetsReady);
  }
}

function taped(station: Exclude<Station, "Making">, pair: TapedPair, sheetsReady: boolean): string {
  const { medial, lateral } = pair.tape;
  switch (station) {
    case "Last":
      return `${pair.labels.size}${pair.labels.size && ", "}${pair.tape.side}, from a taped pattern`;
    case "Lines":
      return `throat ${say(meanLength(pair.tape, "centre"))}, back ${say(meanLength(pair.tape, "back"))}, as taped`;
    case "Shell":
      return `topline ${mm(medial.lengths.topline + lateral.lengths.topline)}, as it was cut`;
    default:
      return anyPair(station, pair, sheetsReady);
  }
}

function anyPair(station: "Leather" | "Lasting" | "Pieces" | "Sheets", { pieces, job, from }: Pair, sheetsReady: boolean): string {
  if (station === "Leather") return leatherWords(job);
  if (station === "Lasting") return lastingWords(job, from);
  if (station === "Pieces") return `${kindsOf(pieces).reduce((n, k) => n + k.count, 0)} pieces for the pair`;
  return `${paperWords(sheetChoicesFrom(job.sheets).paper)}, ${sheetsReady ? "ready to print" : "not made yet"}`;
}
