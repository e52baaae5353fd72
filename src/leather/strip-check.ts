import { finding, type Finding } from "#base/findings.ts";
import { knownFigures } from "./known-leathers.ts";
import type { KnownLeather, Strip, StripReading } from "./leather.ts";
import { elongation } from "./limits.ts";
import { aftersOf, isGrowth, lengthsOf, loadsOn, slack, stripGauges, stripWidths, type Limits } from "./strip-limits.ts";
import { knownWords, wayWords } from "./strip-words.ts";

/** What of a strip a finding speaks of. */
export type StripColumn = "width" | "between" | "load" | "length" | "after";
/** Names the place of a strip or of one reading on it, both counted from 0, as the maker finds it. */
export type WhereOf = (strip: number, reading?: number, column?: StripColumn) => string;

export interface JudgedStrips {
  /** In the order and number of what was said; readings that cannot be are left out. */
  readonly strips: readonly Strip[];
  /** For each strip the numbers that its readings had among all that were said of it. */
  readonly kept: readonly (readonly number[])[];
  readonly findings: readonly Finding[];
}

/** Finds what cannot be, or hardly can, among strips and their readings. Nothing is passed over in silence. */
export function judgeStrips(strips: readonly Strip[], known: KnownLeather, where: WhereOf): JudgedStrips {
  const findings: Finding[] = [];
  const kept = strips.map((strip, s): readonly number[] => {
    if (!within(strip.widthMm, stripWidths)) {
      findings.push(finding("strip-width", { where: where(s, undefined, "width"), widthMm: strip.widthMm, ...stripWidths }));
      return [];
    }
    if (!within(strip.gaugeMm, stripGauges)) {
      findings.push(finding("strip-gauge", { where: where(s, undefined, "between"), gaugeMm: strip.gaugeMm, ...stripGauges }));
      return [];
    }
    if (strip.readings.length === 0) findings.push(finding("strip-empty", { where: where(s) }));
    const good = strip.readings.flatMap((reading, r) => {
      const wrong = wrongWith(strip, reading, known, (column) => where(s, r, column));
      if (wrong) findings.push(wrong);
      return wrong ? [] : [r];
    });
    const falls = fallingAt(strip, good);
    if (falls) findings.push(finding("strip-falls", { where: where(s, falls.at, "length"), beside: where(s, falls.beside), ...falls.told }));
    const again = reloadedAt(strip, good);
    if (again !== undefined) findings.push(finding("strip-reloaded", { where: where(s, again, "load") }));
    return good;
  });
  const judged = strips.map((strip, s): Strip => ({ ...strip, readings: kept[s]!.map((r) => withPlainSet(strip, strip.readings[r]!, (column) => where(s, r, column), findings)) }));
  return { strips: judged, kept, findings };
}

/** Where a strip that was not read from a file stands. */
export const whereIn = (strips: readonly Strip[], of = ""): WhereOf => (strip, reading) => `Strip ${strip + 1}${of && ` of the ${of}`} (${wayWords[strips[strip]!.way]})${reading === undefined ? "" : `, reading ${reading + 1}`}`;

const within = (value: number, { least, most }: Limits): boolean => value >= least && value <= most;

/** What makes a reading of no use, if anything does. */
function wrongWith({ gaugeMm, widthMm }: Strip, { loadN, lengthMm }: StripReading, known: KnownLeather, where: (column: StripColumn) => string): Finding | undefined {
  if (!(loadN > 0 && loadN < loadsOn(widthMm).most)) return finding("strip-load", { where: where("load"), loadN });
  const { least, most } = lengthsOf(gaugeMm, known);
  if (!(lengthMm >= least)) return finding("strip-shorter", { where: where("length"), gaugeMm, lengthMm, growth: isGrowth(gaugeMm, lengthMm) });
  if (lengthMm > most) return finding("strip-beyond-break", { where: where("length"), percent: 100 * elongation(gaugeMm, lengthMm), known: knownWords[known], breakPercent: 100 * knownFigures[known].breaks[1] });
  return undefined;
}

/** Of two readings that cannot go together the one under the heavier load, and the lighter one beside it. */
interface Falling {
  readonly at: number;
  readonly beside: number;
  readonly told: { readonly loadN: number; readonly lengthMm: number; readonly lighterN: number; readonly longerMm: number };
}

/** Of two readings of which the lighter load gave the longer strip, the worst. A heavier load in between excuses it: the strip had set by then. */
function fallingAt({ readings }: Strip, good: readonly number[]): Falling | undefined {
  let worst = slack;
  let found: Falling | undefined;
  good.forEach((first, i) => {
    const a = readings[first]!;
    let heaviest = a.loadN;
    for (const second of good.slice(i + 1)) {
      const b = readings[second]!;
      const [less, more] = a.loadN < b.loadN ? [a, b] : [b, a];
      const excused = less === b && heaviest > 1.02 * a.loadN;
      heaviest = Math.max(heaviest, b.loadN);
      if (excused || more.loadN <= 1.02 * less.loadN || less.lengthMm - more.lengthMm <= worst) continue;
      worst = less.lengthMm - more.lengthMm;
      found = { at: more === b ? second : first, beside: more === b ? first : second, told: { loadN: more.loadN, lengthMm: more.lengthMm, lighterN: less.loadN, longerMm: less.lengthMm } };
    }
  });
  return found;
}

/** The first reading under less than half of a load that had hung there before: the strip had set by then. */
function reloadedAt({ readings }: Strip, good: readonly number[]): number | undefined {
  let heaviest = 0;
  return good.find((r) => {
    const { loadN } = readings[r]!;
    heaviest = Math.max(heaviest, loadN);
    return loadN < 0.5 * heaviest;
  });
}

/** The same reading without a length after a minute that cannot be. */
function withPlainSet({ gaugeMm }: Strip, reading: StripReading, where: (column: StripColumn) => string, findings: Finding[]): StripReading {
  const { loadN, lengthMm, afterMm } = reading;
  if (afterMm === undefined) return reading;
  const { least, most } = aftersOf(gaugeMm, lengthMm);
  if (afterMm > most) findings.push(finding("strip-set-longer", { where: where("after"), afterMm, lengthMm }));
  else if (afterMm < least) findings.push(finding("strip-set-shorter", { where: where("after"), afterMm, gaugeMm }));
  else return reading;
  return { loadN, lengthMm };
}
