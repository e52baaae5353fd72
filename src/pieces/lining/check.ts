import { finding, type Finding } from "#base/findings.ts";
import { halves } from "#lines/feather.ts";
import type { ShellSettings } from "#shell/settings.ts";
import { edgeLength, edgePoint, type NetUpper } from "../net-upper.ts";
import type { PieceSettings } from "../settings.ts";
import type { HeelNet } from "./heel-net.ts";
import { alongCentre, toBreast, toLowest } from "./own.ts";

/** A lining must be smaller than its upper wherever it runs inside a thicker shell; equal is still right along the back. */
const roundingMm = 0.05;

/** Where the lining's own flat is longer than the upper's over it, which it must not be. */
export function checkSmaller(upper: NetUpper, lining: NetUpper): readonly Finding[] {
  const rows = [
    { where: "topline, from the back to the lowest place", of: toLowest },
    { where: "feather line round the heel", of: toBreast },
    { where: "centre line, from throat to toe", of: alongCentre },
    { where: "back", of: ({ backMedial }: NetUpper) => edgeLength(backMedial) },
  ] as const;
  return rows.flatMap(({ where, of }) => {
    const longerMm = of(lining) - of(upper);
    return longerMm > roundingMm ? [finding("lining-longer", { where, longerMm })] : [];
  });
}

/** Usual heights of a heel pocket, mm (common practice, no source). */
const pocketHeight = [48, 55] as const;

/** The pocket reaches the topline whatever its height, and covers the stiffener to its ends. */
export function checkPocket(heel: HeelNet, { liningPocketWingMm }: PieceSettings, { counterMm, counterInnerMm, counterOuterMm }: Pick<ShellSettings, "counterMm" | "counterInnerMm" | "counterOuterMm">): readonly Finding[] {
  const findings: Finding[] = [];
  const [a, b] = [edgePoint(heel.feather, heel.seat), edgePoint(heel.topline, heel.back)];
  const heightMm = Math.sqrt((b[0] - a[0]) ** 2 + (b[1] - a[1]) ** 2);
  const [least, most] = pocketHeight;
  // What the last's size adds to the tabled heights is within these.
  if (heightMm < least - 4 || heightMm > most + 8) findings.push(finding("pocket-height", { heightMm, least, most }));
  if (counterMm === 0) return findings;
  for (const half of halves) {
    const wingMm = half === "medial" ? counterInnerMm : counterOuterMm;
    if (wingMm > liningPocketWingMm + 0.01) findings.push(finding("pocket-short", { half, pocketMm: liningPocketWingMm, stiffenerMm: wingMm }));
  }
  return findings;
}
