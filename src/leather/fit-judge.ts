import { finding, type Finding } from "#base/findings.ts";
import { slipDeviation, type FittedModel } from "./fit-model.ts";
import { stripWays, type KnownLeather, type LeatherSaid } from "./leather.ts";
import { toldPull } from "./known-leathers.ts";
import type { WhereOf } from "./strip-check.ts";
import { stretchCovariance } from "./strip-curves.ts";
import type { StripFit } from "./strip-fit.ts";
import { usualSlip } from "./strip-model.ts";
import { knownWords } from "./strip-words.ts";

/** Below this pull a strip says little of what lasting does, N per mm of width: 15 N on 20 mm. */
const lightPull = 15 / 20;
/** Below this nothing that is hung on a strip to test it can be, N per mm of width: 1 N on 20 mm, or 100 g. */
const tinyPull = 1 / 20;
/** No skin gives so many times more or less than its kind usually does; ours, far beyond the widest range of the table of kinds. */
const farOff = 4;

/** What the maker ought to know of a fit, and what she ought to read again. */
export function judgeFit(fit: Omit<StripFit, "findings">, fitted: FittedModel, said: LeatherSaid, where: WhereOf): Finding[] {
  const { readings, leather, likeness } = fit;
  const { known } = leather;
  const asked = said.strips?.length ?? 0;
  if (readings.length === 0) return asked > 0 ? [finding("strips-none", { known: knownWords[known] })] : [];
  const findings = readings.filter((r) => Math.abs(r.restMm) > 3.5 * r.mayMm).map((r) => finding("strip-reading-off", { where: where(r.strip, r.reading, "length"), restMm: r.restMm }));
  findings.push(...waysThatCross(fit, fitted));
  for (const way of stripWays) {
    const count = readings.filter((r) => r.way === way).length;
    if (count === 0) findings.push(finding("strip-way-missing", { way, known: knownWords[known] }));
    if (count === 1) findings.push(finding("strip-one-reading", { way }));
  }
  const most = Math.max(...readings.map((r) => r.pull));
  return [...findings, ...(most < tinyPull ? [finding("strip-loads-tiny", { mostN: most * 20 })] : unusual(likeness, leather.known, most))];
}

/** Loads lighter than hands pull, and a leather that gives much more or less than its kind. */
function unusual({ along, across, nearest, unlike }: StripFit["likeness"], known: KnownLeather, mostPull: number): Finding[] {
  const light = mostPull < lightPull ? [finding("strip-light", { mostN: mostPull * 20, wantedN: lightPull * 20 })] : [];
  const told = { known: knownWords[known], along, across };
  if (Math.max(along, across) > farOff || Math.min(along, across) < 1 / farOff) return [finding("strip-far-off", told), ...light];
  return unlike ? [...light, finding("strip-unlike", { ...told, nearest: knownWords[nearest] })] : light;
}

/** Across must give more than along, and 45 degrees not far less than such a sheet usually does. */
function waysThatCross({ readings, told }: Omit<StripFit, "findings">, fitted: FittedModel): Finding[] {
  const read = (way: string): boolean => readings.some((r) => r.way === way);
  const c = stretchCovariance(fitted, toldPull);
  const findings: Finding[] = [];
  const more = Math.log(told.across.stretch / told.along.stretch);
  if (read("along") && read("across") && more < -1.645 * Math.sqrt(c[0]! + c[4]! - 2 * c[1]!)) {
    findings.push(finding("strip-ways-crossed", { alongPercent: 100 * told.along.stretch, acrossPercent: 100 * told.across.stretch }));
  }
  const [along, across, slip] = [Math.exp(fitted.model[0]!), Math.exp(fitted.model[1]!), fitted.model[2]!];
  if (read("bias") && slip - Math.log(usualSlip(along, across)) > 2.5 * slipDeviation) findings.push(finding("strip-bias-tight", { biasPercent: 100 * told.bias.stretch }));
  return findings;
}
