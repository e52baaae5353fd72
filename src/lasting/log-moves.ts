import { fitLinear } from "#solve/least-squares.ts";
import type { DraftEffect, DraftEffects } from "./log-effects.ts";
import { tolerances } from "./log-tolerances.ts";
import { endNames, type EndName, type Measured } from "./log.ts";
import { pullKeys } from "./pull-keys.ts";
import { pullRules, type LastingChoices } from "./settings.ts";

/** One draft taken again with another pull. */
export interface DraftMove {
  readonly draft: number;
  /** Above 0 it is pulled more, below 0 eased. */
  readonly byN: number;
  readonly toN: number;
  /** How much farther the edge comes over the feather line, mm; below 0 it goes back. */
  readonly edgeMm: number;
  /** What it does to the ends, mm. */
  readonly moves: readonly { readonly what: EndName; readonly byMm: number }[];
}

/** The maker's pulls, and whether back, seat sides and waists stop at their marks. */
export type AdvisedPulls = Omit<LastingChoices, "correct">;

type Wanted = { readonly [K in EndName]?: number };

/** Drafts that answer for an end, the nearest first: throat by the toe, then the back; sides by waist, seat side, joint. */
const answering: Readonly<Record<EndName, readonly number[]>> = {
  throatDepthMm: [1, 4],
  backHeightMm: [4],
  innerHeightMm: [9, 5, 7],
  outerHeightMm: [10, 6, 8],
};

/** No advice asks for more than twice a pull, or for so much more where it is light, N (our own). */
const muchMoreN = 12;
/** A hand does not tell less than this apart, N. */
const leastN = 0.5;
/** A change of half a pull, N at the least, has a price of a twentieth of a whole tolerance: keeps moves small where many would do (our own). */
const price = 0.05;
const dearN = 6;
/** An end may miss its aim by this before it counts as not reached, and a draft is named only where it brings an end so far, mm. */
const leftMm = 0.3;

/**
 * The fewest drafts that bring the ends where they are wanted: first one draft an end, and the next one that answers for it where the
 * first comes to the end of what pincers pull. Ends that were measured and are right are held while others move; where one would be
 * carried along, the draft that answers for it joins in. Least squares of what is missed, each in its tolerance, with a price on newtons.
 */
export function movesFor(wanted: Wanted, measured: Measured, pulls: AdvisedPulls, { effects }: DraftEffects): { readonly moves: readonly DraftMove[]; readonly left: Wanted } {
  const aims: Wanted = Object.fromEntries(endNames.filter((what) => measured[what] !== undefined).map((what) => [what, wanted[what] ?? 0]));
  const chosen = new Map<number, DraftEffect>();
  const stuck = new Map<number, number>();
  const take = (what: EndName): boolean => {
    const next = answering[what].map((draft) => effects.find((effect) => effect.draft === draft)).find((effect) => effect && !chosen.has(effect.draft) && reaches(effect, what));
    if (next) chosen.set(next.draft, next);
    return next !== undefined;
  };
  for (const what of endNames) if (wanted[what] !== undefined) take(what);
  for (;;) {
    const free = [...chosen.values()].filter(({ draft }) => !stuck.has(draft));
    const byN = solved(free, pulls, endNames.flatMap((what) => (aims[what] === undefined ? [] : [{ what, byMm: aims[what] - gone(what, stuck, chosen) }])));
    const over = free.map((effect, k) => ({ draft: effect.draft, byN: byN[k]!, most: room(effect, byN[k]!, pulls) })).filter(({ byN: n, most }) => Math.abs(n) > Math.abs(most) + 1e-9);
    for (const { draft, most } of over) stuck.set(draft, most);
    const all = new Map([...stuck, ...free.flatMap(({ draft }, k) => (stuck.has(draft) ? [] : [[draft, byN[k]!] as const]))]);
    const left = missed(aims, all, chosen);
    const more = over.length > 0 || Object.keys(left).map((what) => take(what as EndName)).includes(true);
    if (more) continue;
    // A hand does not take a draft again for what no tape shows.
    const worth = new Map([...all].filter(([draft, n]) => Math.abs(n) >= leastN && endNames.some((what) => aims[what] !== undefined && Math.abs(n * chosen.get(draft)!.perN[what]) >= leftMm)));
    return { moves: [...worth].sort(([a], [b]) => a - b).map(([draft, n]) => moveOf(chosen.get(draft)!, n, pulls)), left: missed(aims, worth, chosen) };
  }
}

/** So little that a hand's pull hardly shows at the end: then the draft does not answer for it, mm a newton. */
const reaches = (effect: DraftEffect, what: EndName): boolean => Math.abs(effect.perN[what]) > 0.005;

function solved(drafts: readonly DraftEffect[], pulls: AdvisedPulls, aims: readonly { what: EndName; byMm: number }[]): ArrayLike<number> {
  const n = drafts.length;
  if (n === 0) return [];
  const rows = aims.flatMap(({ what }) => drafts.map(({ perN }) => perN[what] / tolerances[what].mm));
  const prices = drafts.flatMap((effect, i) => drafts.map((_, j) => (i === j ? price / Math.max(dearN, 0.5 * pulledN(effect, pulls)) : 0)));
  return fitLinear([...rows, ...prices], n, [...aims.map(({ what, byMm }) => byMm / tolerances[what].mm), ...drafts.map(() => 0)]);
}

const gone = (what: EndName, moves: ReadonlyMap<number, number>, chosen: ReadonlyMap<number, DraftEffect>): number =>
  [...moves].reduce((sum, [draft, n]) => sum + n * chosen.get(draft)!.perN[what], 0);

/** How far a pull may change before it leaves what pincers do. */
function room(effect: DraftEffect, byN: number, pulls: AdvisedPulls): number {
  const { min, max } = pullRules[pullKeys[effect.draft]!], now = pulledN(effect, pulls), most = Math.min(max, Math.max(2 * now, now + muchMoreN));
  return byN > 0 ? Math.max(0, most - now) : Math.min(0, min - now);
}

/** How hard a draft is pulled as it is, N: what it took where it stops at its mark. */
function pulledN({ draft, tookN }: DraftEffect, pulls: AdvisedPulls): number {
  const said = pulls[pullKeys[draft]!];
  return pulls.stopAtMarks && tookN !== undefined ? Math.min(said, tookN) : said;
}

function missed(aims: Wanted, moves: ReadonlyMap<number, number>, chosen: ReadonlyMap<number, DraftEffect>): Wanted {
  const off = endNames.flatMap((what) => (aims[what] === undefined ? [] : [[what, aims[what] - gone(what, moves, chosen)] as const]));
  return Object.fromEntries(off.filter(([, byMm]) => Math.abs(byMm) > leftMm)) as Wanted;
}

function moveOf(effect: DraftEffect, byN: number, pulls: AdvisedPulls): DraftMove {
  const moves = endNames.map((what) => ({ what, byMm: byN * effect.perN[what] })).filter(({ byMm }) => Math.abs(byMm) >= 0.05);
  return { draft: effect.draft, byN, toN: pulledN(effect, pulls) + byN, edgeMm: byN * effect.edgePerN, moves };
}
