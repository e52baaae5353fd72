import { finding, type Finding } from "#base/findings.ts";
import type { Leather } from "#leather/leather.ts";
import { alike } from "#leather/strip-model.ts";
import { givingMore } from "#leather/toe-law.ts";
import { countedEntries } from "./log-check.ts";
import { grouped } from "./log-groups.ts";
import { band80 } from "./lasted.ts";
import type { ThroatForetold, ShoeEntry } from "./log.ts";

/** A leather with what its own shoes taught about it. */
export interface Learned {
  readonly leather: Leather;
  /** It gives so many times as much as its strips say; between low and high in 80 of 100 cases. */
  readonly factor: number;
  readonly low: number;
  readonly high: number;
  /** How it came to that, pair by pair, as sentences. */
  readonly explained: readonly Finding[];
}

/** Scatter of one shoe's throat from pulling and reading, mm, until the maker's own pairs tell it (from memory). */
export const handMm = 0.8;
/** So many shoes' worth of pairs the first guess of that scatter counts for. */
const handCounts = 4;
/** Scatter of the logarithm of the stretch from skin to skin of one leather, shared by both shoes of a pair (from memory). */
export const skinSpread = 0.06;
/** What one last has of its own that is not the leather's, friction above all: so much looser are shoes on another last believed. */
export const lastSpread = 0.1;
/** A throat that moves by less than this for a tenth of stretch tells nothing about the leather, mm. */
export const leastPerTenthMm = 0.05;
/** A pair farther off than so many standard deviations counts as if it were just there: a slip must not turn the leather. */
const mostOff = 3;
/** A tenth more, as a logarithm. */
const tenth = Math.log(1.1);

type Telling = ShoeEntry & { readonly foretold: ThroatForetold };

/** What one pair says about the logarithm of the factor, and how surely. */
interface PairSays {
  readonly pair: number;
  readonly last: string;
  readonly log: number;
  readonly variance: number;
  readonly missMm: number;
}

/**
 * What the shoes of a leather teach about it, as one number: it gives `factor` times as much as its strips say. Before any shoe its
 * logarithm is normal about 0 with the leather's common spread; each shoe's throat is one reading of it; put together as normal
 * readings are (textbook: conjugate normal). Shoes of other leathers are left out; those on other lasts count less. Method and limits:
 * docs/method/pair-log.md.
 */
export function updatedBy(leather: Leather, log: readonly ShoeEntry[], last?: string): Learned {
  const { entries, findings } = countedEntries(log.filter((entry) => entry.leather === leather.name));
  const telling = entries.filter(tells), hand = handFrom(entries);
  const prior = leather.spread.common ** 2;
  const says = pairsOf(telling).map((pair) => pairSays(pair, hand, prior));
  const groups = grouped(says, (pair) => pair.last);
  let precision = 1 / prior, sum = 0;
  for (const [name, pairs] of groups) {
    const own = pairs.reduce((all, { variance }) => all + 1 / variance, 0);
    const mean = pairs.reduce((all, { log: l, variance }) => all + l / variance, 0) / own;
    // All shoes on one last share what that last has of its own, so it is not averaged away.
    const weight = 1 / (1 / own + (last === undefined || name === last ? 0 : lastSpread ** 2));
    precision += weight;
    sum += weight * mean;
  }
  const mean = sum / precision, sd = Math.sqrt(1 / precision);
  const learned = { factor: Math.exp(mean), low: Math.exp(mean - band80 * sd), high: Math.exp(mean + band80 * sd) };
  if (says.length === 0) return { leather, ...learned, explained: [...findings, finding("log-leather-untold", { leather: leather.name, others: log.length - entries.length, shoes: entries.length })] };
  const explained = [
    ...findings,
    ...says.map(({ pair, missMm, log: l, variance, last: on }) => finding("log-pair-says", { pair, missMm, factor: Math.exp(l), weight: Math.min(1, prior / (prior + variance)), otherLast: last !== undefined && on !== last })),
    finding("log-leather-gives", { leather: leather.name, ...learned, pairs: says.length, handMm: hand }),
  ];
  return { ...learned, explained, leather: givenMore(leather, learned.factor, sd, says.length) };
}

/** Skins differ also when the leather is known well; but a shoe never makes it less sure than it was. */
function givenMore(leather: Leather, factor: number, sd: number, pairs: number): Leather {
  const common = Math.min(leather.spread.common, Math.sqrt(sd * sd + skinSpread * skinSpread));
  const from = `${leather.source} ${pairs === 1 ? "One pair" : `${pairs} pairs`} of your own: it gives ${factor.toFixed(2)} times as much.`;
  return { ...leather, numbers: alike(givingMore(leather.numbers, factor)), spread: { ...leather.spread, common }, source: from };
}

function tells(entry: ShoeEntry): entry is Telling {
  const { foretold, measured } = entry;
  return measured.throatDepthMm !== undefined && foretold !== undefined && Math.abs(foretold.perTenthMm) >= leastPerTenthMm;
}

function pairsOf(entries: readonly Telling[]): readonly (readonly Telling[])[] {
  const byPair = grouped(entries, ({ pair, last }) => `${pair} ${last}`);
  return [...byPair.values()].sort((a, b) => a[0]!.pair - b[0]!.pair);
}

/** Mean of a pair's shoes, each by how surely it tells. */
function pairSays(shoes: readonly Telling[], hand: number, prior: number): PairSays {
  let precision = 0, sum = 0, miss = 0;
  for (const { foretold, measured } of shoes) {
    const off = measured.throatDepthMm! - foretold.throatDepthMm, perLog = foretold.perTenthMm / tenth;
    const weight = (perLog / hand) ** 2;
    precision += weight;
    sum += weight * (Math.log(foretold.factor ?? 1) + off / perLog);
    miss += off / shoes.length;
  }
  const variance = 1 / precision + skinSpread ** 2, most = mostOff * Math.sqrt(variance + prior);
  return { pair: shoes[0]!.pair, last: shoes[0]!.last, log: Math.max(-most, Math.min(most, sum / precision)), variance, missMm: miss };
}

/**
 * Scatter of one shoe's throat from the hand, mm: two shoes of a pair differ by √2 of it. The first guess counts as some pairs, so
 * that one lucky pair does not make the hand steady.
 */
function handFrom(entries: readonly ShoeEntry[]): number {
  let sum = handCounts * handMm ** 2, count = handCounts;
  for (const pair of grouped(entries, ({ pair: p, last }) => `${p} ${last}`).values()) {
    const [left, right] = (["left", "right"] as const).map((side) => pair.find((entry) => entry.side === side)?.measured.throatDepthMm);
    if (left === undefined || right === undefined) continue;
    sum += (left - right) ** 2 / 2;
    count++;
  }
  return Math.sqrt(sum / count);
}
