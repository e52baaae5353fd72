import type { Job } from "#job/job.ts";
import type { Making } from "#making/making.ts";
import { units } from "#making/amounts/unit-table.ts";
import { inUnit, readAmount } from "#making/amounts/units.ts";
import { setMaking } from "./making-edits.ts";

/** The job with a shelf from which all its pairs were taken, each amount in the unit it was written in; nothing where none of it lies there. */
export function offTheShelf(job: Job, { needs, toBuy }: Pick<Making, "needs" | "toBuy">): Job | undefined {
  const { shelf = {} } = job.making;
  const used = toBuy.flatMap(({ good, needed, onShelf }): readonly (readonly [string, string])[] => {
    const measure = needs.find((n) => n.good === good)?.measure;
    const read = measure && shelf[good] !== undefined ? readAmount(shelf[good], measure) : undefined;
    if (!read || "wrong" in read || onShelf <= 0 || needed <= 0) return [];
    const rest = inUnit(Math.max(0, onShelf - needed), read.unit);
    return [[good, `${Number(rest.toPrecision(3))} ${units[read.unit].sign}`]];
  });
  return used.length === 0 ? undefined : setMaking(job, { shelf: { ...shelf, ...Object.fromEntries(used) } });
}
