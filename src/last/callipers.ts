import { finding, type Finding } from "#base/findings.ts";
import { Refusal } from "#base/refusal.ts";
import type { Measures } from "./last.ts";
import type { MeasureName, SaidOfScan } from "./said.ts";
import { isLastsLength } from "./unit.ts";

/** The two measures that set the scale: long and square to each other, and taken by callipers without a tape's give. */
const scaling = ["stickLength", "ballWidth"] as const;
type Scaling = (typeof scaling)[number];

/**
 * What a phone's scan is usually out by in its dimensions, mm: 0.89 ± 0.51 in 12 plaster casts of limbs against a clinical scanner
 * (photogrammetry study of prosthetic casts, abstract). More left over than that is more than such a scan explains.
 */
const usualErrorMm = 0.89;
/** A stretch over this share is no fault of scale any more but a wrong unit or a misread measure; our own limit. */
const farStretch = 0.03;
/** Two stretches farther apart than this contradict each other: more than 1 mm on a ball width, three times what callipers misread. Our own limit. */
const contradiction = 0.015;

/** A measure farther than this from a scan whose unit is known is a slip, or the unit is wrong; two that say the same are believed. Our own limits. */
const slip = 0.15;
const agree = 0.05;

/**
 * Refuses a calliper measure that cannot be of this scan.
 * @param unread the factor by which the scan was made larger before `found` was measured
 * @param known whether the scan by itself is a last in some unit; where not, the stick length alone gives its size
 * @throws Refusal that names the measure
 */
export function refuseSlip(said: SaidOfScan["measured"], found: Measures, unread: number, known: boolean): void {
  const from = known ? unread : 1;
  const given = scaling.flatMap((measure) => (said?.[measure] === undefined ? [] : [{ measure, saidMm: said[measure], foundMm: found[measure] / from }]));
  const ratios = given.map(({ saidMm, foundMm }) => saidMm / foundMm);
  const stick = said?.stickLength;
  const alike = ratios.length === 2 && Math.abs(ratios[0]! / ratios[1]! - 1) < agree;
  if (alike && stick !== undefined && isLastsLength(stick)) return;
  const far = given.find((_, i) => Math.abs(ratios[i]! - 1) > slip);
  if (far) throw new Refusal(finding("measure-slip", { ...far, alone: given.length === 1 }));
}

/** How much larger the scan has to be made, and what to say of that. */
export interface Scale {
  readonly factor: number;
  readonly findings: readonly Finding[];
}

/**
 * One factor for the whole scan from the maker's callipers: least squares of both in logarithms, ln k = Σ m² ln(m / f) / Σ m². The
 * weights m² hold the error of callipers and scan to be the same in millimetres on both, so it counts as 1 / m in a logarithm. Where
 * the two contradict each other the stick length alone is followed, and that is said.
 * @param found as measured on the scan before, mm
 * @param unread the factor by which the scan was made larger before `found` was measured
 */
export function scaleByCallipers(said: SaidOfScan["measured"], found: Measures, unread = 1): Scale | undefined {
  const given = scaling.flatMap((name) => (said?.[name] === undefined ? [] : [{ name, mm: said[name], stretch: said[name] / found[name] - 1 }]));
  const [first, second] = given;
  if (!first) return undefined;
  const contradict = second !== undefined && Math.abs(first.stretch - second.stretch) > contradiction;
  const used = contradict ? [first] : given;
  const weight = used.reduce((sum, { mm }) => sum + mm * mm, 0);
  const factor = Math.exp(used.reduce((sum, { mm, stretch }) => sum + mm * mm * Math.log(1 + stretch), 0) / weight);
  const left = given.map(({ name, mm }) => ({ measure: name, leftMm: factor * found[name] - mm, share: (factor * found[name]) / mm - 1 }));
  const whole = factor * unread - 1;
  const more = ({ leftMm }: { leftMm: number }): boolean => Math.abs(leftMm) > usualErrorMm;
  // What has a sentence of its own is not said here as well.
  const calm = given.length > 1 ? left.filter((one) => !contradict && !more(one)) : left;
  const findings = [finding("scale-set", { stretch: whole, by: used.map((u) => u.name), given: given.length, left: calm })];
  if (contradict) findings.push(contradicting(first, second, unread, left[1]!.leftMm));
  else for (const one of left) if (more(one)) findings.push(finding("scale-leaves", { ...one, usualMm: usualErrorMm }));
  if (Math.abs(whole) > farStretch) findings.push(finding("scale-far", { stretch: whole, by: used.map((u) => u.name) }));
  return { factor, findings };
}

interface Stretched {
  readonly name: Scaling;
  readonly stretch: number;
}

function contradicting(first: Stretched, second: Stretched, unread: number, leftMm: number): Finding {
  const of = ({ stretch }: Stretched): number => (1 + stretch) * unread - 1;
  return finding("scale-contradicts", { first: first.name, firstStretch: of(first), second: second.name, secondStretch: of(second), leftMm });
}

/**
 * How far the maker's own tape may lie from what was found, mm. ISO 20685 allows a scanned foot 2 mm against 1 mm by hand in its dimensions
 * (as restated in a textbook of anthropometry); both together with a scan's usual 0.89 mm make 1.5 for a length by callipers or rule. A tape
 * round a body may differ by 4 there; lasts do not give, so 3. Along the feather, half a metre round a curve, a tape does no better.
 */
const byRuleMm = 1.5;
const byTapeMm = 3;
const byTape: ReadonlySet<MeasureName> = new Set(["jointGirth", "waistGirth", "instepGirth", "heelGirth", "featherLength", "featherMedial", "featherLateral"]);

/** The maker's other measures held beside what was found on the last: those that differ by more than hand and scan explain. */
export function ownMeasureFindings(said: SaidOfScan["measured"], found: Measures): Finding[] {
  const names = (Object.keys(found) as MeasureName[]).filter((name) => said?.[name] !== undefined && name !== "stickLength" && name !== "ballWidth");
  return names.flatMap((measure) => {
    const [saidMm, foundMm] = [said![measure]!, found[measure]];
    const limitMm = byTape.has(measure) ? byTapeMm : byRuleMm;
    return Math.abs(saidMm - foundMm) > limitMm ? [finding("own-measure-differs", { measure, saidMm, foundMm, limitMm })] : [];
  });
}
