import { finding, type Finding } from "#base/findings.ts";
import type { FootMeasures } from "./foot-measures.ts";

/**
 * What is usual in women's feet: 1st to 99th percentile, mm. ANSUR II, 1,986 women of the US Army, bare feet under load (US Government,
 * public release of 2017), worked out from its data.
 */
export const usualFoot = {
  footLength: [219, 276],
  ballLength: [161, 204],
  ballGirth: [203, 257],
  footBreadth: [82.85, 104],
  heelBreadth: [57, 80.15],
} as const satisfies Partial<Record<keyof FootMeasures, readonly [number, number]>>;

/** Ball girth that goes with length, and with length and breadth: least squares over the same women, mm, with the spread left. */
export const girthByLength = { constant: 86.942, length: 0.57317, spread: 9.37 } as const;
export const girthByBoth = { constant: 12.2041, length: 0.176087, breadth: 1.861003, spread: 5.748 } as const;

const words: Readonly<Record<keyof typeof usualFoot, string>> = { footLength: "foot length", ballLength: "length from heel to ball", ballGirth: "ball girth", footBreadth: "foot breadth", heelBreadth: "heel breadth" };

/** Measures that 98 of 100 women do not have, and girths that do not belong to such a length and breadth (three times the spread). */
export function unusualFoot(m: Pick<FootMeasures, keyof typeof usualFoot>): Finding[] {
  const findings: Finding[] = [];
  for (const what of Object.keys(usualFoot) as (keyof typeof usualFoot)[]) {
    const [fromMm, toMm] = usualFoot[what];
    if (m[what] < fromMm || m[what] > toMm) findings.push(finding("foot-unusual", { what: words[what], mm: m[what], fromMm, toMm, of: "where 98 of 100 women measured lie" }));
  }
  const expected = girthByBoth.constant + girthByBoth.length * m.footLength + girthByBoth.breadth * m.footBreadth;
  const alone = girthByLength.constant + girthByLength.length * m.footLength;
  const [middle, spread, of] = Math.abs(m.ballGirth - expected) > 3 * girthByBoth.spread ? [expected, girthByBoth.spread, "where it belongs with this length and breadth"] : [alone, girthByLength.spread, "where it belongs with this length"];
  if (Math.abs(m.ballGirth - middle) > 3 * spread) findings.push(finding("foot-unusual", { what: "ball girth", mm: m.ballGirth, fromMm: middle - 3 * spread, toMm: middle + 3 * spread, of }));
  return findings;
}
