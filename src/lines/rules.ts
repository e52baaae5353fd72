import type { Last } from "#last/last.ts";
import type { LineRules, LineSettings, Rule } from "./lines.ts";

const mm = (value: number, min: number, max: number, name: string, why: string, source: string): Rule => ({
  value: half(value),
  min: half(min),
  max: half(max),
  step: 0.5,
  unit: "mm",
  name,
  why,
  source,
});

/** To the half millimetre that a hand can mark. */
const half = (n: number): number => Math.round(2 * n) / 2;

/** EU size whose nominal last length (size × 20/3 mm, ISO/TS 19407:2015) this last has. */
const sizeOf = (last: Last): number => (last.measures.stickLength * 3) / 20;

/**
 * The rules of construction for a flat pump, worked out for one last. Values grow with the last; each is a starting point that
 * the maker may change. Lengths are measured on the last's surface from the feather line.
 */
export function lineRulesFor(last: Last): LineRules {
  const size = sizeOf(last);
  // Heights and depths were written down for EU 37; lengths grow with the last's length.
  const grown = last.measures.lastLength / 244;
  const throat = Math.min(70 + 2 * (size - 37), last.measures.vampPointFromToe - 5);
  return {
    throatDepthMm: mm(
      throat,
      Math.min(51, throat - 10),
      Math.max(90 * grown, throat),
      "throat depth",
      "Longer hides the toes but cuts into the instep once it comes near the joint line; shorter shows the toes and holds less. A classic round toe lies at 65 to 75 mm on EU 37, and about 2 mm further per size.",
      "Common practice, no source, for 70 mm at EU 37; an early English handbook for cordwainers (1813) gives 2 to 3 inches (51 to 76 mm) from opening to toe for women's slippers.",
    ),
    backHeightMm: mm(
      last.measures.lastLength / 5 + 5,
      48 * grown,
      61 * grown,
      "back height",
      "Too low and the shoe slips off, too high and it bites the tendon. One millimetre is felt, two make it slip.",
      "A fifth of the last length plus 5 mm: common practice, no source. A handbook of 1813 gives 2 to 2¼ inches (51 to 57 mm) for light slippers; ready-made orthopaedic low shoes ask for at least 61 mm at foot length 240 (national standard appendix).",
    ),
    sideHeightMedialMm: mm(
      39.5 * grown,
      35 * grown,
      44 * grown,
      "inner side height",
      "The inner side stands 2 to 5 mm higher than the outer one, because the arch is deeper there; on the foot both then look level.",
      "Common practice, no source.",
    ),
    sideHeightLateralMm: mm(
      36 * grown,
      32 * grown,
      40 * grown,
      "outer side height",
      "The outer side is the lowest place of the topline; it must not touch the outer ankle bone, nor fall so low that the side gapes.",
      "Common practice, no source.",
    ),
    lowestAtMedial: place("lowest place of the inner side"),
    lowestAtLateral: place("lowest place of the outer side"),
    throatRadiusMm: mm(
      26 * grown,
      16 * grown,
      34 * grown,
      "throat radius",
      "A small radius makes a pointed throat that tears and is hard to fold; a large one looks square and lets the sides stand off. Round toes carry 22 to 30 mm, almond toes 18 to 24 mm.",
      "Common practice, no source.",
    ),
  };
}

const place = (name: string): Rule => ({
  value: 0.5,
  min: 0.42,
  max: 0.58,
  step: 0.01,
  unit: "of length",
  name,
  why: "The topline is lowest at the waist, about half the length from the heel; further forward it nears the joint, further back it weakens the hold of the heel.",
  source: "Common practice, no source, for 45 to 55 % of the length from the heel.",
});

/** The settings that the rules propose, with the maker's own put in place of them. */
export function settle(rules: LineRules, own: Partial<LineSettings>): LineSettings {
  const out: Record<string, number> = {};
  for (const key of Object.keys(rules) as (keyof LineSettings)[]) out[key] = own[key] ?? rules[key].value;
  return out as unknown as LineSettings;
}
