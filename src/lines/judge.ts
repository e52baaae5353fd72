import { finding, type Finding } from "#base/findings.ts";
import { halfName } from "#base/sentences/names.ts";
import type { Last } from "#last/last.ts";
import { arcNearest, distanceSquared, pointOn } from "#last/surface-curve.ts";
import { halves } from "./feather.ts";
import type { Forme } from "./forme.ts";
import type { LineRules, Lines, LineSettings } from "./lines.ts";


/** What a maker should look at before she cuts: values outside the usual, a throat behind the vamp point, a hump, a low joint. */
export function judgeLines(last: Last, rules: LineRules, lines: Omit<Lines, "findings">, forme: Forme): Finding[] {
  const findings: Finding[] = [];
  for (const key of Object.keys(rules) as (keyof LineSettings)[]) {
    const rule = rules[key], value = lines.settings[key];
    if (value < rule.min - 1e-9 || value > rule.max + 1e-9)
      findings.push(finding("line-out-of-range", { what: rule.name, value, min: rule.min, max: rule.max, unit: rule.unit, whyItMatters: rule.why }));
  }
  const ahead = last.measures.vampPointFromToe - lines.settings.throatDepthMm;
  const throat = pointOn(last.centreRidge, lines.settings.throatDepthMm);
  if (ahead < 0) findings.push(finding("throat-behind-vamp-point", { throatMm: lines.settings.throatDepthMm, vampPointMm: last.measures.vampPointFromToe }, throat));
  else if (ahead < 4.9) findings.push(finding("throat-close-to-vamp-point", { aheadMm: ahead }, throat));
  for (const half of halves) {
    const topline = half === "medial" ? lines.toplineMedial : lines.toplineLateral;
    const joint = half === "medial" ? last.landmarks.jointMedial : last.landmarks.jointLateral;
    const below = Math.sqrt(distanceSquared(pointOn(topline, arcNearest(topline, joint)), joint));
    if (below < 12) findings.push(finding("topline-crosses-joint", { half: halfName(half), belowMm: below }, joint));
    const low = half === "medial" ? lines.lowestMedial : lines.lowestLateral;
    const asked = half === "medial" ? lines.settings.sideHeightMedialMm : lines.settings.sideHeightLateralMm;
    if (low.heightMm < asked - 0.5) findings.push(finding("lowest-elsewhere", { half: halfName(half), askedMm: asked, lowestMm: low.heightMm, alongFeatherMm: low.alongFeatherMm }, low.at));
    if (low.heightMm >= lines.settings.backHeightMm) findings.push(finding("topline-rises-to-hump", { half: halfName(half) }, low.at));
  }
  if (lines.settings.backHeightMm > forme.ceilingMm - 6)
    findings.push(finding("back-near-comb", { backMm: lines.settings.backHeightMm, combMm: forme.ceilingMm }, pointOn(last.backCurve, lines.settings.backHeightMm)));
  return findings;
}
