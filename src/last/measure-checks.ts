import { finding, type Finding } from "#base/findings.ts";
import type { LastMeasurements } from "./measured.ts";
import { sizeOfStick, stickOfSize, type MeasureKey } from "./measures-by-size.ts";

/** One pair of numbers that should belong together. */
export interface MeasureCheck {
  readonly measure: MeasureKey;
  /** What it is held against: another number, or the size. */
  readonly against: MeasureKey | "size";
  /** From where to where the first is usual, given the rest; undefined where it cannot be said. */
  readonly usual: (m: LastMeasurements, sizeEu: number) => readonly [number, number];
  /** What a slip of the tape would look like: when the first is too small, when it is too great. */
  readonly slips: readonly [small: string, great: string];
  readonly source: string;
}

/** Foot that a last serves: two Paris points shorter (common practice, no source). */
const footOf = (m: LastMeasurements): number => m.stickLengthMm - 40 / 3;

/** Within three residual deviations of the feet, and what a last may be smaller or larger than they (our own allowance). */
const round = (value: number, deviation: number, smaller: number, larger: number): readonly [number, number] => [value - 3 * deviation - smaller, value + 3 * deviation + larger];

/** All checks, in the order they are told. They warn; what is impossible is refused by loft-limits.ts. */
export const measureChecks: readonly MeasureCheck[] = [
  {
    measure: "stickLengthMm",
    against: "size",
    usual: (m, sizeEu) => [stickOfSize(sizeEu) - 5, stickOfSize(sizeEu) + (m.toe === "pointed" ? 25 : m.toe === "almond" ? 16 : 12)],
    slips: ["the last is of a smaller size, or was measured along the bottom only to the feather", "the tape followed the curve of the bottom instead of running straight, or the last is of a larger size"],
    source: "Paris point 20/3 mm a size (ISO/TS 19407:2015); a pointed toe takes 15 to 20 mm of useful length (a boot maker's note, famekey-original.com)",
  },
  {
    measure: "jointGirthMm",
    against: "ballWidthMm",
    usual: (m) => [2.55 * m.ballWidthMm, 3.2 * m.ballWidthMm],
    slips: ["the tape cut a corner or lay before the joints, or the width was taken over the walls instead of at the feather edge", "the tape was slack or askew, or the width was taken before or behind the joints"],
    source: "joint girth 5 · (size + fitting) and ball width 75 mm at EU 37, 1.65 a size (both common practice, no source) give 2.80 to 2.93 for fittings 5 and 6; Golding 1902 has 3 in to 8 in on a lady's foot, 2.67; wider by our own allowance",
  },
  {
    measure: "jointGirthMm",
    against: "stickLengthMm",
    usual: (m) => round(86.942 + 0.57317 * footOf(m), 9.37, 14, 6),
    slips: ["the tape lay before the joints, or one number is in another unit", "the tape was slack, or lay over the waist"],
    source: "ANSUR II 2012, women: ball girth on foot length, residual deviation 9.370 mm",
  },
  {
    measure: "jointGirthMm",
    against: "ballWidthMm",
    // The bottom of a last is about 15 mm narrower than the foot that stands on it (91.4 against 76.5 mm at EU 38).
    usual: (m) => round(12.2041 + 0.176087 * footOf(m) + 1.861003 * (m.ballWidthMm + 15), 5.748, 14, 10),
    slips: ["the tape was pulled, or the width was taken over the walls", "the tape was slack, or the width was taken too far forward"],
    source: "ANSUR II 2012, women: ball girth on foot length and breadth, residual deviation 5.748 mm",
  },
  {
    measure: "waistGirthMm",
    against: "jointGirthMm",
    usual: (m) => [m.jointGirthMm - 24, m.jointGirthMm + 3],
    slips: ["the tape was pulled into the hollow of the waist", "the tape lay too far up the cone, or joint and waist were swapped"],
    source: "common practice, no source: the waist is the least girth between joint and instep",
  },
  {
    measure: "instepGirthMm",
    against: "jointGirthMm",
    usual: (m) => [m.jointGirthMm - 3, m.jointGirthMm + 24],
    slips: ["the tape lay over the waist, or joint and instep were swapped", "the tape lay too high on the cone"],
    source: "Golding 1902, The Manufacture of Boots and Shoes: instep 9.5 mm over the joint on a lady's last, 12.7 on her foot; wider by our own allowance",
  },
  {
    measure: "instepGirthMm",
    against: "waistGirthMm",
    usual: (m) => [m.waistGirthMm, m.waistGirthMm + 34],
    slips: ["waist and instep were swapped", "the tape of the waist was pulled into the hollow, or that of the instep lay high on the cone"],
    source: "common practice, no source",
  },
  {
    measure: "heelGirthMm",
    against: "instepGirthMm",
    usual: (m) => [1.35 * m.instepGirthMm, 1.6 * m.instepGirthMm],
    slips: ["the tape did not go round the point of the seat", "the tape ran to the top of the comb (the long heel)"],
    source: "synthetic lasts 1.43 to 1.49; wider by our own allowance",
  },
  {
    measure: "heelGirthMm",
    against: "stickLengthMm",
    usual: (m) => [1.2 * m.stickLengthMm, 1.42 * m.stickLengthMm],
    slips: ["the tape did not go round the point of the seat", "the tape ran to the top of the comb (the long heel)"],
    source: "ANSUR II 2012, women: heel to ankle 1.26 of the foot's length; a last's short heel 1.28 to 1.34 of its own (synthetic lasts)",
  },
  {
    measure: "ballWidthMm",
    against: "stickLengthMm",
    usual: (m) => [0.27 * m.stickLengthMm, 0.34 * m.stickLengthMm],
    slips: ["the width was taken before or behind the joints", "the width was taken over the walls instead of from feather edge to feather edge"],
    source: "common practice, no source: 73 to 80 mm on EU 36 to 40, 0.300 to 0.304 of the length; Golding 1902 has 3 in on a lady's foot of about EU 37, 0.31; wider by our own allowance",
  },
  {
    measure: "seatWidthMm",
    against: "ballWidthMm",
    usual: (m) => [0.6 * m.ballWidthMm, 0.77 * m.ballWidthMm],
    slips: ["the seat was taken too near its back", "the seat was taken over the walls, or at the waist"],
    source: "common practice, no source: 50 to 54 mm on EU 36 to 40, 0.68 of the ball",
  },
  {
    measure: "toeSpringMm",
    against: "heelHeightMm",
    usual: (m) => [Math.max(2, 5 - 0.1 * m.heelHeightMm), 16 + 0.1 * m.heelHeightMm],
    slips: ["the last did not stand on its tread", "the last stood without its heel block, or rocked back"],
    source: "common practice, no source: 6 to 14 mm on low heels; Golding 1902: about 25 on slipper lasts",
  },
];

/**
 * Numbers that do not belong together, each pair once, with what a slip would look like. `sizeEu` as the maker said it; left out, the
 * size the stick length makes.
 */
export function judgeMeasures(m: LastMeasurements, sizeEu: number = sizeOfStick(m.stickLengthMm, m.toe)): readonly Finding[] {
  const told = new Set<string>();
  const out: Finding[] = [];
  for (const { measure, against, usual, slips } of measureChecks) {
    const [fromMm, toMm] = usual(m, sizeEu);
    const askedMm = m[measure];
    if ((askedMm >= fromMm && askedMm <= toMm) || told.has(`${measure} ${against}`)) continue;
    told.add(`${measure} ${against}`);
    const short = (key: string): string => key.replace(/Mm$/, "");
    const small = askedMm < fromMm;
    const data = { measure: short(measure), askedMm, fromMm, toMm, offMm: small ? fromMm - askedMm : askedMm - toMm, slip: slips[small ? 0 : 1] };
    out.push(against === "size" ? finding("measure-against-size", { ...data, sizeEu }) : finding("measures-do-not-match", { ...data, against: short(against), againstMm: m[against] }));
  }
  return out;
}
