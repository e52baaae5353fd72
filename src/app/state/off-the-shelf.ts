import type { Job } from "#job/job.ts";
import type { Making } from "#making/making.ts";
import type { Measure } from "#making/goods.ts";
import { units, type UnitId } from "#making/amounts/unit-table.ts";
import { inUnit, readAmount } from "#making/amounts/units.ts";
import type { History } from "./history.ts";
import { setMaking } from "./making-edits.ts";
import { ofThisPair } from "./of-this-pair.ts";

/** Words for the step. */
export const takingOff = "taking this off the shelf";

/**
 * The job with a shelf from which all its pairs were taken, each amount in the unit it was written in; nothing where none of it lies there.
 * What is drawn out and used again, and what is kept in hand, stays on the shelf.
 */
export function offTheShelf(job: Job, { needs, toBuy, pairs }: Pick<Making, "needs" | "toBuy" | "pairs">): Job | undefined {
  const { shelf = {} } = job.making;
  const used = needs.flatMap(({ good, measure, gross, again }): readonly (readonly [string, string])[] => {
    const read = shelf[good] === undefined ? undefined : readAmount(shelf[good], measure);
    const onShelf = toBuy.find((b) => b.good === good)?.onShelf ?? 0;
    const taken = pairs * gross;
    return !read || "wrong" in read || again || onShelf <= 0 || taken <= 0 ? [] : [[good, rest(onShelf, taken, read.unit, measure)]];
  });
  return used.length === 0 ? undefined : setMaking(job, { shelf: { ...shelf, ...Object.fromEntries(used) } });
}

/** What is left, as fine as what is taken asks for: a hundredth of that, and a thousandth of the unit at least. Pieces are whole, and so are dozens, or they are told in pieces. */
function rest(onShelf: number, taken: number, unit: UnitId, measure: Measure): string {
  if (measure === "count") {
    const pieces = Math.max(0, Math.floor(onShelf - taken + 1e-9));
    const whole = pieces % units[unit].size === 0 ? unit : "piece";
    return `${inUnit(pieces, whole)} ${units[whole].sign}`;
  }
  const decimals = Math.min(6, Math.max(3, 2 + Math.ceil(-Math.log10(inUnit(taken, unit)))));
  const figure = inUnit(Math.max(0, onShelf - taken), unit).toFixed(decimals).replace(/\.?0+$/, "");
  // Just three decimals could be read as thousands: 1.756 as 1756.
  return `${/\.\d{3}$/.test(figure) ? `${figure}0` : figure} ${units[unit].sign}`;
}

/** How often this pair was taken off the shelf already, and what the last time changed: "upper leather: 2 m², now 1.756 m²". */
export function takenOff(history: History): { readonly times: number; readonly changed: readonly string[] } | undefined {
  const steps = ofThisPair(history);
  const taken = steps.flatMap((step, i) => (i > 0 && step.what === takingOff ? [{ was: steps[i - 1]!.job.making.shelf ?? {}, is: step.job.making.shelf ?? {} }] : []));
  const last = taken.at(-1);
  return last && { times: taken.length, changed: Object.entries(last.is).flatMap(([good, is]) => (is === last.was[good] ? [] : [`${good}: ${last.was[good] ?? "nothing"}, now ${is}`])) };
}
