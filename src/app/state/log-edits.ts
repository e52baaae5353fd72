import type { Job } from "#job/job.ts";
import type { Side } from "#last/last.ts";
import { isShoe } from "#lasting/log-check.ts";
import type { Asked, ThroatForetold, Measured, ShoeEntry } from "#lasting/log.ts";

/** What a shoe that is written down was made from, and what was asked and foretold of it then. */
export interface ShoeMade {
  readonly last: string;
  readonly leather: string;
  readonly asked?: Asked;
  readonly foretold?: ThroatForetold;
  /** By how much a tape reads more over its upper than on the bare last, mm. */
  readonly overMm?: NonNullable<ShoeEntry["overMm"]>;
}
type PlainMeasure = Exclude<keyof Measured, "marginsMm">;
/** A measure of a shoe: one of its lengths, or the margin at a draft. */
export type ShoeMeasure = PlainMeasure | `margin ${number}`;

/** The pairs that are written down, by number; nothing where there are none. */
export const pairsIn = ({ log }: Pick<Job, "log">): readonly number[] => [...new Set(log.map((e) => e.pair))].sort((a, b) => a - b);

/** The shoe as it is written down; where that was done twice, the later one. */
export const shoeIn = ({ log }: Pick<Job, "log">, pair: number, side: Side): ShoeEntry | undefined => log.findLast((e) => isShoe(e, pair, side));

export function measureOf(entry: Pick<ShoeEntry, "measured"> | undefined, of: ShoeMeasure): number | undefined {
  const draft = draftOf(of);
  return draft === undefined ? entry?.measured[of as PlainMeasure] : entry?.measured.marginsMm?.[draft];
}

const draftOf = (of: ShoeMeasure): string | undefined => (of.startsWith("margin ") ? of.slice("margin ".length) : undefined);

/** Writes one measure down, or takes it out; a shoe of which nothing is left is no longer in the log. */
export function setMeasureOf(job: Job, pair: number, side: Side, made: ShoeMade, of: ShoeMeasure, value: number | undefined): Job {
  return edit(job, pair, side, made, (entry) => ({ ...entry, measured: withMeasure(entry.measured, of, value) }));
}

export function setShoeNote(job: Job, pair: number, side: Side, made: ShoeMade, note: string): Job {
  return edit(job, pair, side, made, ({ note: _, ...rest }) => (note === "" ? rest : { ...rest, note }));
}

/** Takes both shoes of a pair out. */
export const removePair = (job: Job, pair: number): Job => ({ ...job, log: job.log.filter((e) => e.pair !== pair) });

function edit(job: Job, pair: number, side: Side, made: ShoeMade, change: (entry: ShoeEntry) => ShoeEntry): Job {
  const at = job.log.findLastIndex((e) => isShoe(e, pair, side));
  const entry = change(at < 0 ? { pair, side, ...madeAs(job, pair, made), measured: {} } : job.log[at]!);
  const empty = Object.keys(entry.measured).length === 0 && entry.note === undefined;
  if (at < 0) return empty ? job : { ...job, log: [...job.log, entry] };
  return { ...job, log: empty ? job.log.toSpliced(at, 1) : job.log.with(at, entry) };
}

/** Both shoes of a pair were made from the same, and the same was foretold of them: as it stands with the first that was written down. */
function madeAs({ log }: Job, pair: number, made: ShoeMade): ShoeMade {
  const first = log.find((e) => e.pair === pair);
  if (!first) return made;
  const { last, leather, asked, foretold, overMm } = first, told = foretold ?? (leather === made.leather && last === made.last ? made.foretold : undefined);
  return { last, leather, ...(asked && { asked }), ...(told && { foretold: told }), ...(overMm && { overMm }) };
}

/** Puts what was foretold with both shoes of a pair; what stands with a shoe already stays. */
export const keepForetold = (job: Job, pair: number, foretold: ThroatForetold): Job =>
  ({ ...job, log: job.log.map((e) => (e.pair === pair && !e.foretold ? { ...e, foretold } : e)) });

function withMeasure(measured: Measured, of: ShoeMeasure, value: number | undefined): Measured {
  const draft = draftOf(of);
  if (draft === undefined) return without({ ...measured, [of]: value });
  const margins = without({ ...measured.marginsMm, [draft]: value });
  const { marginsMm: _, ...rest } = measured;
  return Object.keys(margins).length === 0 ? rest : { ...rest, marginsMm: margins };
}

/** Without what is undefined. */
const without = <T extends object>(of: T): { [K in keyof T]: Exclude<T[K], undefined> } => Object.fromEntries(Object.entries(of).filter(([, v]) => v !== undefined)) as { [K in keyof T]: Exclude<T[K], undefined> };

/** What the work holds at "shoe 1 left throatDepthMm" or "shoe 1 left margin 4". */
export function shoeNumberAt(job: Job, spot: string): number | undefined {
  const [, pair, side, ...of] = spot.split(" ") as [string, string, Side, ...string[]];
  return measureOf(shoeIn(job, Number(pair), side), of.join(" ") as ShoeMeasure);
}
