import { finding, type Finding } from "#base/findings.ts";
import { unwatched, type Watch } from "#base/watch.ts";
import { byName, endNames, type EndName, type EndsByName } from "./log.ts";
import type { Ends, Lasted } from "./lasted.ts";
import { makingOf, type LastingCase, type Mechanics } from "./lasting-case.ts";
import { trueMechanics } from "./mechanics.ts";
import { lowestShares, shiftedTopline, type ToplineShift } from "./shift.ts";
import { Secant } from "./secant.ts";
import { pullRules } from "./settings.ts";

/** What the maker wants on the finished shoe, mm; what is left out is as drawn. */
export interface Target {
  readonly throatDepthMm?: number;
  readonly backHeightMm?: number;
}

/** One trial: what was cut farther out, what the ends then missed (above 0: farther from the toe, higher), and whether it came to rest. */
export interface Round {
  readonly shift: ToplineShift;
  readonly miss: EndsByName;
  /** The most that a side height at a quarter point misses, where the lines are asked as they are drawn, mm. */
  readonly betweenMm: number;
  readonly settled: boolean;
}

export interface Compensated {
  /** What is to be cut farther out than level 1 proposes, mm: four numbers of the job. */
  readonly shift: ToplineShift;
  /** The corrected pattern, x0 y0 … mm, one pair a vertex of the fine shell. */
  readonly uv: Float64Array;
  /** How it lies once it is pulled over. */
  readonly lasted: Lasted;
  /** What the ends are asked to be. */
  readonly aimed: EndsByName;
  /** What the pattern without any correction misses. */
  readonly uncorrected: EndsByName;
  readonly rounds: readonly Round[];
  readonly reached: boolean;
  readonly findings: readonly Finding[];
}

export interface CompensateOptions {
  readonly target?: Target;
  readonly watch?: Watch;
  /** All four ends are to come so near, mm. */
  readonly withinMm?: number;
  readonly mostRounds?: number;
  readonly mechanics?: Mechanics;
}

/** What is cut farther out does not go beyond what a job may hold of it, mm. */
const mostShiftMm = pullRules.throatShiftMm.max;
const shiftNames: Readonly<Record<EndName, keyof ToplineShift>> = { throatDepthMm: "throatShiftMm", backHeightMm: "backShiftMm", innerHeightMm: "innerShiftMm", outerHeightMm: "outerShiftMm" };
const shiftOf = ({ throatShiftMm, backShiftMm, innerShiftMm, outerShiftMm }: ToplineShift): ToplineShift => ({ throatShiftMm, backShiftMm, innerShiftMm, outerShiftMm });

/**
 * Corrects the flat pattern until the topline ends where it is asked: level 1 proposes a sheet, level 2 pulls it over draft by draft, and
 * what throat, back and sides miss is cut farther out, X ← X − B · (ended − asked), until all come within 0.3 mm. B begins as 1 mm for 1 mm
 * and learns from each trial. The best trial is given. Method and limits: docs/method/compensation.md.
 */
export function compensate(of: LastingCase, { target = {}, watch = unwatched, withinMm = 0.3, mostRounds = 6, mechanics = trueMechanics }: CompensateOptions = {}): Compensated {
  const making = makingOf(of), { fine } = of, lowest = lowestShares(of.lines), shares = mostRounds + 2;
  const drawn = Object.keys(target).length === 0;
  const pull = mechanics.puller(fine, of);
  const pulled = (uv: Float64Array, nth: number): Lasted => pull(making, uv, (stage, fraction) => watch(stage, (nth + fraction) / shares));
  const first = pulled(fine.uv, 0), aimed: EndsByName = { ...byName(first.asked), ...target };
  const missOf = (ends: Ends): EndsByName => byEnd((name) => byName(ends)[name] - aimed[name]);
  const proposed = mechanics.propose(fine, making, of);
  const rounds: Round[] = [], secant = new Secant(endNames.length, mostShiftMm);
  // A pattern that was corrected before is gone on from.
  let shift = shiftOf(of.settings), best: { readonly round: Round; readonly lasted: Lasted; readonly uv: Float64Array } | undefined;
  for (let nth = 1; nth <= mostRounds; nth++) {
    const uv = shiftedTopline(fine.shell, proposed, lowest, shift), lasted = pulled(uv, nth), miss = missOf(lasted.ends);
    const round: Round = { shift, miss, betweenMm: drawn ? betweenOf(lasted) : 0, settled: lasted.settled };
    rounds.push(round);
    if (!best || worstOf(miss) < worstOf(best.round.miss)) best = { round, lasted, uv };
    if (worstOf(miss) <= withinMm || !secant.worthwhile(endNames.map((name) => miss[name]))) break;
    const next = secant.next(endNames.map((name) => shift[shiftNames[name]]), endNames.map((name) => miss[name]));
    shift = Object.fromEntries(endNames.map((name, k) => [shiftNames[name], next[k]!])) as unknown as ToplineShift;
  }
  watch("compensate", 1);
  const { round, lasted, uv } = best!, reached = worstOf(round.miss) <= withinMm;
  const said = { rounds: rounds.length, withinMm, betweenMm: round.betweenMm, ...round.miss };
  // How it ends says nothing for sure where it tears or does not come to rest.
  const stopped = lasted.findings.filter(({ code }) => code === "lasting-tears" || code === "lasting-astray" || code === "lasting-restless");
  return { shift: round.shift, uv, lasted, aimed, uncorrected: missOf(first.ends), rounds, reached, findings: [finding(reached ? "compensated" : "compensation-short", said), ...stopped] };
}

const byEnd = (of: (name: EndName) => number): EndsByName => Object.fromEntries(endNames.map((name) => [name, of(name)])) as EndsByName;

export const worstOf = (miss: EndsByName): number => Math.max(...endNames.map((name) => Math.abs(miss[name])));

function betweenOf({ ends, asked }: Pick<Lasted, "ends" | "asked">): number {
  return Math.max(...(["medial", "lateral"] as const).flatMap((half) => ends.sideMm[half].map((mm, k) => Math.abs(mm - asked.sideMm[half][k]!))));
}
