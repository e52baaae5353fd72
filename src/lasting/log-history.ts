import type { Side } from "#last/last.ts";
import { countedEntries } from "./log-check.ts";
import { grouped } from "./log-groups.ts";
import { judgePair, judgeShoe, type Judgement } from "./log-judge.ts";
import type { ShoeEntry } from "./log.ts";

/** One pair of the history: its shoes, how they were judged, and how well the throat was foretold. */
export interface PairRow {
  readonly pair: number;
  readonly shoes: Partial<Readonly<Record<Side, ShoeEntry>>>;
  /** Left against right; nothing while one of them is missing. */
  readonly alike?: Judgement;
  readonly asAsked: Partial<Readonly<Record<Side, Judgement>>>;
  /** Mean of what was measured minus what was foretold for the throat, mm. */
  readonly missMm?: number;
}

/** All pairs made on one last from one leather, in their order. */
export interface History {
  readonly last: string;
  readonly leather: string;
  readonly pairs: readonly PairRow[];
}

const sides: readonly Side[] = ["left", "right"];

/** The log as the maker looks it up: by last and leather, in the order in which they first came. Asked is what was asked of each shoe then. */
export function historyOf(log: readonly ShoeEntry[]): readonly History[] {
  const groups = grouped(countedEntries(log).entries, ({ last, leather }) => JSON.stringify([last, leather]));
  return [...groups.values()].map((entries) => {
    const byPair = [...grouped(entries, ({ pair }) => pair)].sort(([a], [b]) => a - b);
    return { last: entries[0]!.last, leather: entries[0]!.leather, pairs: byPair.map(([pair, shoes]) => rowOf(pair, shoes)) };
  });
}

function rowOf(pair: number, entries: readonly ShoeEntry[]): PairRow {
  const shoes = Object.fromEntries(entries.map((entry) => [entry.side, entry])) as PairRow["shoes"];
  const asAsked = Object.fromEntries(sides.flatMap((side) => (shoes[side]?.asked ? [[side, judgeShoe(side, shoes[side].measured, shoes[side].asked)]] : [])));
  const misses = entries.flatMap(({ measured: { throatDepthMm }, foretold }) => (throatDepthMm === undefined || !foretold ? [] : [throatDepthMm - foretold.throatDepthMm]));
  return {
    pair, shoes, asAsked,
    ...(shoes.left && shoes.right && { alike: judgePair(shoes.left.measured, shoes.right.measured) }),
    ...(misses.length > 0 && { missMm: misses.reduce((a, b) => a + b, 0) / misses.length }),
  };
}
