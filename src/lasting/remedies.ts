import { finding, type Finding } from "#base/findings.ts";
import { unwatched } from "#base/watch.ts";
import { knownFigures } from "#leather/known-leathers.ts";
import { leatherFrom, usualLeather } from "#leather/leather-from.ts";
import { givingMore } from "#leather/toe-law.ts";
import { toplineOf } from "#shell/tension.ts";
import { mostStandOffMm } from "#shell/check-rows.ts";
import { coarseTrial, quantile, type Banding, type BandOptions, type Pattern } from "./band.ts";
import type { Compensated } from "./compensate.ts";
import { band80, pullWord, strongFromN, type Lasted } from "./lasted.ts";
import { makingOf, type LastingCase, type Making } from "./lasting-case.ts";
import { leastMarginMm, tolerances } from "./log-tolerances.ts";
import { byName, endNames } from "./log.ts";
import { trueMechanics } from "./mechanics.ts";
import { pullKeys } from "./pull-keys.ts";
import { lastingFrom } from "./settings.ts";

/** Why the pattern alone is not enough. */
export const limitKinds = ["short", "band", "grain", "stands off", "strong", "margin"] as const;
export type LimitKind = (typeof limitKinds)[number];

/** What can be changed besides the pattern. */
export const remedyKinds = ["tape", "direction", "lining", "leather"] as const;
export type RemedyKind = (typeof remedyKinds)[number];

/** What a making does, as numbers that say how far it is from trouble; less is better. */
export interface Strains {
  /** The most that any end misses what it is aimed at, mm. */
  readonly missMm: number;
  /** Half-width of the throat's band, from how far it moves for a leather that gives a tenth more, mm. */
  readonly bandMm: number;
  /** Stretch that all but a hundredth of the upper stays below, a share. */
  readonly stretch: number;
  /** How far the topline stands off at most, mm. */
  readonly standOffMm: number;
}

/** One remedy tried with the pattern as it is, against the making as it is. */
export interface Tried {
  readonly remedy: RemedyKind;
  readonly now: Strains;
  readonly after: Strains;
  /** How far the throat moves with it, mm. */
  readonly throatByMm: number;
  /** The limits that it brings nearer by a sixth at least. */
  readonly helps: readonly LimitKind[];
}

export interface Honest {
  readonly limits: readonly LimitKind[];
  readonly tried: readonly Tried[];
  readonly findings: readonly Finding[];
}

/** What stands against this pattern in this leather; nothing where it is as it should be. */
export function limitsOf({ reached, lasted }: Pick<Compensated, "reached" | "lasted">, banding?: Banding): readonly LimitKind[] {
  const has = (kind: LimitKind): boolean => {
    if (kind === "short") return !reached;
    if (kind === "band") return banding !== undefined && halfWidth(banding) > tolerances.throatDepthMm.mm;
    if (kind === "strong") return strongestOf(lasted) > 0;
    if (kind === "margin") return lasted.drafts.some(({ marginMm }) => marginMm < leastMarginMm);
    return lasted.troubles.some((trouble) => (trouble.kind === kind && !trouble.spans) || (kind === "grain" && trouble.kind === "tears"));
  };
  return limitKinds.filter(has);
}

/** The strongest of the drafts that are pulled half as hard again as is usual there, N; 0 where none is. */
function strongestOf({ drafts }: Pick<Lasted, "drafts">): number {
  const usual = lastingFrom();
  return drafts.reduce((most, { number, pullN }) => (pullWord(pullN) === "strong" && pullN > muchHarder * usual[pullKeys[number]!] ? Math.max(most, pullN) : most), 0);
}
/** From so many times the usual pull on it is told (our own). */
const muchHarder = 1.5;

const halfWidth = ({ banded: { throatDepthMm: { low, high } } }: Banding): number => (high - low) / 2;

/**
 * Says honestly where the pattern alone is not enough, and what helps: tape, direction, lining, another leather, each tried on the coarse
 * sheet with the pattern as it is. Nothing is tried where nothing stands against it.
 */
export function whatHelps(of: LastingCase, pattern: Pattern & Pick<Compensated, "reached" | "lasted" | "aimed">, banding?: Banding, { watch = unwatched, mechanics = trueMechanics }: Pick<BandOptions, "watch" | "mechanics"> = {}): Honest {
  const limits = limitsOf(pattern, banding);
  if (limits.length === 0) return { limits, tried: [], findings: [] };
  const trial = coarseTrial(of, pattern, mechanics), remedies = remediesFor(of);
  let done = 0;
  const run = (making: Making): Lasted => {
    const lasted = trial(making, (stage, fraction) => watch(stage, (done + fraction) / (2 * remedies.length + 2)));
    done++;
    return lasted;
  };
  const strained = (making: Making) => {
    const lasted = run(making), more = run({ ...making, upper: { ...making.upper, numbers: givingMore(making.upper.numbers, 1.1) } });
    return { strains: strainsOf(of, pattern, making, lasted, more), throatMm: lasted.ends.throatDepthMm };
  };
  const now = strained(makingOf(of));
  const tried = remedies.map(({ remedy, making }): Tried => {
    const after = strained(making);
    return { remedy, now: now.strains, after: after.strains, throatByMm: after.throatMm - now.throatMm, helps: limits.filter((kind) => better(kind, now.strains, after.strains)) };
  });
  watch("remedies", 1);
  const helping = tried.filter(({ helps }) => helps.length > 0);
  return {
    limits, tried,
    findings: [...limits.map((kind) => limitFinding(kind, pattern, banding)), ...helping.map(({ remedy, helps, now: a, after: b, throatByMm }) => finding("remedy-helps", { remedy, helps: [...helps], now: a, after: b, throatByMm })), ...(helping.length === 0 ? [finding("no-remedy", {})] : [])],
  };
}

function remediesFor(of: LastingCase): readonly { readonly remedy: RemedyKind; readonly making: Making }[] {
  const making = makingOf(of), { settings, upper, lining } = of, usual = lastingFrom();
  const untaped = of.edge !== "taped" || settings.tapeN === 0;
  return [
    { remedy: "tape", making: { ...making, edge: "taped", settings: { ...settings, tapeN: untaped ? usual.tapeN : 2 * settings.tapeN } } },
    { remedy: "direction", making: { ...making, settings: { ...settings, upperTurnDeg: Math.abs(settings.upperTurnDeg) < 15 ? 90 : 0 } } },
    { remedy: "lining", making: { ...making, lining: lining ? { ...lining, numbers: givingMore(lining.numbers, 0.5) } : leatherFrom(undefined, "lining", knownFigures[usualLeather.lining].thicknessMm) } },
    { remedy: "leather", making: { ...making, upper: { ...upper, numbers: givingMore(upper.numbers, 2 / 3) } } },
  ];
}

function strainsOf(of: LastingCase, { aimed }: Pick<Compensated, "aimed">, { upper }: Making, lasted: Lasted, more: Lasted): Strains {
  const ends = byName(lasted.ends), vertex = new Map(Array.from(lasted.source, (v, k) => [v, k])), over = of.coarse.shell;
  const topline = [...toplineOf(over, "medial"), ...toplineOf(over, "lateral")].map((v) => lasted.standOff[vertex.get(v) ?? 0] ?? 0);
  return {
    missMm: Math.max(...endNames.map((name) => Math.abs(ends[name] - aimed[name]))),
    bandMm: (band80 * upper.spread.common * Math.abs(more.ends.throatDepthMm - ends.throatDepthMm)) / Math.log(1.1),
    stretch: quantile(Array.from(lasted.most).sort((a, b) => a - b), 0.99) - 1,
    standOffMm: topline.reduce((a, b) => Math.max(a, b), 0),
  };
}

function better(kind: LimitKind, now: Strains, after: Strains): boolean {
  const less = (key: keyof Strains): boolean => after[key] < (5 / 6) * now[key];
  if (kind === "short") return less("missMm");
  if (kind === "band") return less("bandMm");
  if (kind === "grain") return less("stretch");
  return kind === "stands off" && less("standOffMm");
}

function limitFinding(kind: LimitKind, { lasted }: Pick<Compensated, "lasted">, banding: Banding | undefined): Finding {
  const worst = (of: (trouble: Lasted["troubles"][number]) => boolean): number => lasted.troubles.filter(of).reduce((most, { by }) => Math.max(most, by), 0);
  const by = {
    short: 0,
    band: banding ? halfWidth(banding) : 0,
    grain: worst(({ kind: k }) => k === "grain" || k === "tears"),
    "stands off": worst(({ kind: k }) => k === "stands off"),
    strong: strongestOf(lasted),
    margin: Math.min(...lasted.drafts.map(({ marginMm }) => marginMm), Infinity),
  }[kind];
  const limit = { short: 0, band: tolerances.throatDepthMm.mm, grain: 0, "stands off": mostStandOffMm, strong: strongFromN, margin: leastMarginMm }[kind];
  return finding("pattern-limit", { kind, by, limit });
}
