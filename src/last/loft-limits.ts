import { finding } from "#base/findings.ts";
import { Refusal } from "#base/refusal.ts";
import type { LastMeasurements } from "./measured.ts";

/** Ranges this form is made for; mm. Lengths: adults (from memory); the others are our own limits, no source. */
const ranges = {
  stickLength: [180, 330],
  heelHeight: [0, 42],
  toeSpring: [2, 25],
} as const;

/** Widths as shares of another measure: a last is about 0.30 of its length wide, its seat about two thirds of its ball. */
const ballToLength = [0.25, 0.37] as const;
const seatToBall = [0.54, 0.84] as const;

/**
 * Refuses numbers no women's low-heel last has. Girths are judged where the form is fitted to them.
 * @throws Refusal naming what is wrong and the range that fits
 */
export function refuseBadMeasures(m: LastMeasurements): void {
  for (const [measure, mm] of Object.entries(m).filter((e): e is [string, number] => typeof e[1] === "number"))
    if (!Number.isFinite(mm) || mm < 0) throw new Refusal(finding("measure-not-a-length", { measure: measure.replace(/Mm$/, ""), value: String(mm) }));
  const within = (measure: keyof typeof ranges, mm: number): void => {
    const [fromMm, toMm] = ranges[measure];
    if (mm < fromMm || mm > toMm) throw new Refusal(finding("measure-out-of-range", { measure, askedMm: mm, fromMm, toMm }));
  };
  within("stickLength", m.stickLengthMm);
  within("heelHeight", m.heelHeightMm);
  within("toeSpring", m.toeSpringMm);
  share("ballWidth", m.ballWidthMm, "stickLength", m.stickLengthMm, ballToLength);
  share("seatWidth", m.seatWidthMm, "ballWidth", m.ballWidthMm, seatToBall);
  impossible(m);
}

/** A closed tape is longer than twice any width it goes round (geometry); seat and instep point lie on both tapes, heel farther back. */
function impossible(m: LastMeasurements): void {
  const least = (measure: string, askedMm: number, against: string, againstMm: number, factor: number, why: string): void => {
    if (askedMm < factor * againstMm) throw new Refusal(finding("measures-impossible", { measure, askedMm, against, againstMm, leastMm: Math.ceil(factor * againstMm), why }));
  };
  least("jointGirth", m.jointGirthMm, "ballWidth", m.ballWidthMm, 2, "a tape round the joints is longer than twice the width it goes round");
  least("heelGirth", m.heelGirthMm, "instepGirth", m.instepGirthMm, 1, "the tape over instep and heel goes the longer way round from the same point");
}

function share(measure: string, askedMm: number, against: string, againstMm: number, [from, to]: readonly [number, number]): void {
  if (askedMm >= from * againstMm && askedMm <= to * againstMm) return;
  throw new Refusal(finding("measures-contradict", { measure, askedMm, against, againstMm, fromMm: Math.ceil(from * againstMm), toMm: Math.floor(to * againstMm) }));
}
