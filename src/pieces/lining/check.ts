import { finding, type Finding } from "#base/findings.ts";
import { halves, type Half } from "#lines/feather.ts";
import { nearestOn } from "#plane/along.ts";
import { apart } from "#plane/measure.ts";
import type { ShellSettings } from "#shell/settings.ts";
import { placeOn, pointOf } from "../edges/places.ts";
import { edgeLength, edgePoint, type NetUpper } from "../net-upper.ts";
import type { NetPanel } from "../panel.ts";
import type { Xy } from "../piece.ts";
import type { PieceSettings } from "../settings.ts";
import type { HeelNet } from "./heel-net.ts";
import { alongCentre, toBreast, toLowest } from "./own.ts";
import type { LiningPanels } from "./three.ts";

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

/**
 * Where the pieces of a lining in three, put together, are longer than the upper over them: on either half along topline and feather line
 * from the middle of the heel to throat and toe, up from the feather line at the heights that a maker measures, and at the back.
 */
export function checkPanels(upper: NetUpper, lining: NetUpper, { vamp, quarters, pocket }: Pick<LiningPanels, "vamp" | "quarters" | "pocket">): readonly Finding[] {
  const longer = (where: string, longerMm: number): readonly Finding[] => (longerMm > roundingMm ? [finding("lining-longer", { where, longerMm })] : []);
  const [seat, back] = (["seat", "back"] as const).map((name) => pointOf(pocket, placeOn(pocket, name)!)) as [Xy, Xy];
  return [
    ...halves.flatMap((half) => {
      const inner = half === "medial", on = inner ? "inside" : "outside";
      const top = partOf(vamp, "throat", inner) + partOf(quarters[half], "topline", inner) + partOf(pocket, "back", !inner);
      const low = partOf(vamp, "toe", !inner) + partOf(quarters[half], "feather", inner) + partOf(pocket, "seat", inner);
      const { throat, toe } = upper.places;
      const heights = [0, 1, 2].flatMap((k) => longer(`height at ${k + 1}/4 on the ${on}`, heightAt(lining, half, k) - heightAt(upper, half, k)));
      return [
        ...longer(`topline on the ${on}, all its pieces together`, top - (inner ? throat : edgeLength(upper.topline) - throat)),
        ...longer(`feather line on the ${on}, all its pieces together`, low - (inner ? edgeLength(upper.feather) - toe : toe)),
        ...heights,
      ];
    }),
    ...longer("back, on the heel pocket", apart(seat, back) - edgeLength(upper.backMedial)),
  ];
}

/** How long a panel's edge is from its beginning to a place, or on from there; the whole edge where its role is said. */
function partOf(panel: NetPanel, of: "throat" | "toe" | "seat" | "back" | "topline" | "feather", toPlace: boolean): number {
  if (of === "topline" || of === "feather") return edgeLength(panel.edges.find(({ role }) => role === of)!);
  const { edge, s } = placeOn(panel, of)!;
  return toPlace ? s : edgeLength(panel.edges[edge]!) - s;
}

/** From a quarter's place on the topline straight to the feather line, mm. */
function heightAt({ feather, topline, places }: NetUpper, half: Half, k: number): number {
  const [x, y] = edgePoint(topline, (half === "medial" ? places.quarterMedial : places.quarterLateral)[k]!);
  return nearestOn(feather.line, feather.arc, x, y).distance;
}

/** Usual heights of a heel pocket, mm (common practice, no source). */
const pocketHeight = [48, 55] as const;

/** The pocket reaches the topline whatever its height, and covers the stiffener to its ends. */
export function checkPocket(heel: HeelNet, { liningPocketWingMm }: PieceSettings, { counterMm, counterInnerMm, counterOuterMm }: Pick<ShellSettings, "counterMm" | "counterInnerMm" | "counterOuterMm">): readonly Finding[] {
  const findings: Finding[] = [];
  const [a, b] = [edgePoint(heel.feather, heel.seat), edgePoint(heel.topline, heel.back)];
  const heightMm = apart(a, b);
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
