import { deviationOf, fitModel, type FittedModel, type ModelReading } from "./fit-model.ts";
import { judgeFit } from "./fit-judge.ts";
import { firmPull, knownFigures, toldPull } from "./known-leathers.ts";
import { stripWays, type KnownLeather, type Leather, type LeatherSaid, type Strip, type StripWay } from "./leather.ts";
import { likenessOf } from "./likeness.ts";
import { elongation, grainLimitOf } from "./limits.ts";
import { judgeStrips, whereIn, type WhereOf } from "./strip-check.ts";
import { bandedStretch, curveOf, stretchCovariance, type Banded } from "./strip-curves.ts";
import type { FittedReading, StripFit } from "./strip-fit.ts";
import { alike, numbersOf } from "./strip-model.ts";
import { stretchAt } from "./uniaxial.ts";

/** What is said of a leather may have come from a file: then `where` names its rows. */
interface FitOptions {
  readonly where?: WhereOf;
}

/** Places of one skin differ: standard deviation of the logarithm of the stretch, all ways together. From memory, ours. */
const overTheSkin = 0.08;
/** Pull up to which curves are shown at least, N per mm: 30 N on 20 mm. */
const shownPull = 30 / 20;

/**
 * The leather that the strips tell, with how sure it is; where there are none, or none of use, the known leather with its wide band.
 * Never throws: what is wrong with strips is among the findings. Method: docs/method/strip-test.md.
 */
export function fitStrips(said: LeatherSaid, { where = whereIn(said.strips ?? []) }: FitOptions = {}): StripFit {
  const known = said.known ?? "goat";
  const judged = judgeStrips(said.strips ?? [], known, where);
  const readings = judged.strips.flatMap((strip, s) => strip.readings.map((reading, r): ModelReading & { readonly at: number } =>
    ({ strip: s, at: judged.kept[s]![r]!, way: strip.way, pull: reading.loadN / strip.widthMm, gauge: strip.gaugeMm, length: reading.lengthMm })));
  const usualMm = knownFigures[known].thicknessMm;
  const thicknessMm = said.thicknessMm ?? usualMm;
  const plain = fitModel(readings, known, thicknessMm / usualMm);
  const fitted = readings.length === 0 ? plain : widened(plain, readings);
  const numbers = alike(numbersOf(fitted.model));
  const fittedReadings = readings.map((r): FittedReading => {
    const restMm = r.length - (r.gauge + fitted.slips[r.strip]!) * stretchAt(numbers, r.way, r.pull);
    return { strip: r.strip, reading: r.at, way: r.way, pull: r.pull, stretch: elongation(r.gauge, r.length), restMm, mayMm: deviationOf(r) };
  });
  const most = readings.reduce((sofar, { pull }) => Math.max(sofar, pull), shownPull);
  const told = Object.fromEntries(stripWays.map((way) => [way, bandedStretch(fitted, way, toldPull)])) as Record<StripWay, Banded>;
  const setShare = setOf(judged.strips);
  const leather: Leather = {
    name: said.name ?? known,
    known,
    numbers,
    spread: spreadOf(stretchCovariance(fitted, toldPull), readings.length > 0),
    thicknessMm,
    grainLimit: grainLimitOf(known),
    breakLimit: knownFigures[known].breaks[0],
    ...(setShare === undefined ? {} : { set: setShare }),
    source: sourceOf(known, readings),
  };
  const fit = { leather, curves: stripWays.map((way) => curveOf(fitted, way, most)), readings: fittedReadings, restMm: rootMeanSquare(fittedReadings.map((r) => r.restMm)), told, likeness: likenessOf(numbers, known) };
  return { ...fit, findings: [...judged.findings, ...judgeFit(fit, fitted, said, where)] };
}

/** Where the readings lie farther from the fit than they can be misread, all of it is that much less sure (Birge's ratio; from memory). */
function widened(fitted: FittedModel, readings: readonly ModelReading[]): FittedModel {
  const numbers = numbersOf(fitted.model);
  const off = readings.map((r) => ((r.gauge + fitted.slips[r.strip]!) * stretchAt(numbers, r.way, r.pull) - r.length) / deviationOf(r));
  const ratio = Math.max(1, rootMeanSquare(off)) ** 2;
  return { ...fitted, covariance: fitted.covariance.map((value) => ratio * value) };
}

/** A covariance of three ways as what they have in common and what each has by itself. */
function spreadOf(c: Float64Array, read: boolean): Leather["spread"] {
  const [along, across, bias] = [c[0]!, c[4]!, c[8]!];
  const shared = Math.max(0, Math.min((c[1]! + c[2]! + c[5]!) / 3, along, across, bias));
  const rest = (whole: number): number => Math.sqrt(Math.max(0, whole - shared));
  return { along: rest(along), across: rest(across), bias: rest(bias), common: Math.sqrt(shared + (read ? overTheSkin ** 2 : 0)) };
}

/** Share of the stretch that was still there after a minute, over all readings of it. */
function setOf(strips: readonly Strip[]): number | undefined {
  let left = 0, square = 0;
  for (const { gaugeMm, readings } of strips) {
    for (const { lengthMm, afterMm } of readings) {
      if (afterMm === undefined) continue;
      left += (afterMm - gaugeMm) * (lengthMm - gaugeMm);
      square += (lengthMm - gaugeMm) ** 2;
    }
  }
  return square > 0 ? Math.max(0, Math.min(1, left / square)) : undefined;
}

function sourceOf(known: KnownLeather, readings: readonly ModelReading[]): string {
  if (readings.length === 0) return `${knownFigures[known].source} The middle of the range at ${20 * firmPull} N.`;
  const strips = new Set(readings.map((r) => r.strip)).size;
  return `Your own strips: ${readings.length} ${readings.length === 1 ? "reading" : "readings"} on ${strips} ${strips === 1 ? "strip" : "strips"}.`;
}

function rootMeanSquare(values: readonly number[]): number {
  return values.length === 0 ? 0 : Math.sqrt(values.reduce((sum, v) => sum + v * v, 0) / values.length);
}
