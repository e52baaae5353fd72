import { finding, type Finding } from "#base/findings.ts";
import type { Side } from "#last/last.ts";
import { dimensions, type Dimension } from "./log-tolerances.ts";
import type { Measured, ShoeEntry } from "./log.ts";
import { onBareLast } from "./over-upper.ts";

/** What can be used of what was typed, and what cannot, at its field. */
export interface CheckedMeasures {
  readonly measured: Measured;
  readonly findings: readonly Finding[];
}

/** A finding's field as in the job: `throatDepthMm`, `marginsMm.4`. */
type Bounds = readonly [least: number, most: number];

/** Beyond these no shoe measures, mm (our own; wide, so that only slips of the pen and other units are caught). */
const boundsFor = (lastLengthMm: number): Readonly<Record<Dimension, Bounds>> => ({
  throatDepthMm: [10, lastLengthMm / 2],
  backHeightMm: [10, 120],
  innerHeightMm: [5, 100],
  outerHeightMm: [5, 100],
  soleMarginMm: [-5, 30],
  heelHeightMm: [0, 120],
});
const marginBounds: Bounds = [-20, 60];
/** So far from what was asked a measure is asked about again, mm. */
const farMm = 10;

/** Takes out what no shoe can measure. A throat cannot lie farther from the toe than half the last is long. */
export function checkMeasured(side: Side, measured: Measured, lastLengthMm: number, asked: Measured = {}): CheckedMeasures {
  const findings: Finding[] = [];
  const usable = (field: string, what: Dimension | "marginMm", value: number, [least, most]: Bounds): boolean => {
    const can = Number.isFinite(value) && value >= least && value <= most;
    if (!can) findings.push(finding("log-measure-impossible", { side, field, what, value, least, most }));
    return can;
  };
  const bounds = boundsFor(lastLengthMm);
  const kept: { -readonly [K in Dimension]?: number } = {};
  for (const what of dimensions) {
    const value = measured[what];
    if (value === undefined || !usable(what, what, value, bounds[what])) continue;
    kept[what] = value;
    const want = asked[what];
    if (want !== undefined && Math.abs(value - want) > farMm) findings.push(finding("log-measure-far", { side, field: what, what, value, askedMm: want }));
  }
  const margins = Object.entries(measured.marginsMm ?? {}).filter(([draft, value]) => usable(`marginsMm.${draft}`, "marginMm", value, marginBounds));
  return { measured: { ...kept, ...(margins.length > 0 && { marginsMm: Object.fromEntries(margins) }) }, findings };
}

/** A pair's number stands for one pair in all of a log, whatever last and leather it was made of. */
export const isShoe = (entry: ShoeEntry, pair: number, side: Side): boolean => entry.pair === pair && entry.side === side;

/**
 * Of a shoe that was written down twice the later entry counts; entries without any measure tell nothing. What was read over the lasted
 * upper is given as it lies on the bare last.
 */
export function countedEntries(log: readonly ShoeEntry[]): { readonly entries: readonly ShoeEntry[]; readonly findings: readonly Finding[] } {
  const again = (entry: ShoeEntry, k: number): boolean => log.slice(k + 1).some((later) => isShoe(later, entry.pair, entry.side));
  return {
    entries: log.filter((entry, k) => !again(entry, k) && Object.keys(entry.measured).length > 0).map(bare),
    findings: log.flatMap((entry, k) => (again(entry, k) ? [finding("log-shoe-twice", { pair: entry.pair, side: entry.side })] : [])),
  };
}

function bare(entry: ShoeEntry): ShoeEntry {
  if (!entry.overMm) return entry;
  const { overMm, ...rest } = entry;
  return { ...rest, measured: onBareLast(rest.measured, overMm) };
}
