import { finding, type Finding } from "#base/findings.ts";
import type { Half } from "#lines/feather.ts";
import type { Draft } from "../draft.ts";
import { toeReachMm } from "../margins.ts";
import { acrossAt } from "../marks.ts";
import { edgePoint } from "../net-upper.ts";
import type { NetPanel, NetPlace, PlaceName } from "../panel.ts";
import type { Xy } from "../piece.ts";
import { shownAt, type ToCheck } from "./to-check.ts";
import { pointOf, widthNear, type CutPanel, type EdgeWidths } from "./widths.ts";

/** Least margin for the pincers, mm (common practice, no source). */
export const pincersMm = 15;
/** So much the widths that are measured on the drawing may fall short by rounding, mm. */
const roundingMm = 0.02;
/** Cosine of 40 degrees: where the cutting line turns more against the feather line it is that of the seam at the corner. */
const alike = 0.77;

/** Lasting margins as they are drawn: wide enough for the pincers, and not so wide that those of both sides lie over each other. */
export function checkLastingMargins(input: ToCheck, cut: readonly CutPanel[]): readonly Finding[] {
  return [...tooNarrow(input, cut), ...meeting(input, cut)];
}

function tooNarrow(input: ToCheck, cut: readonly CutPanel[]): readonly Finding[] {
  return cut.flatMap(({ panel, draft, widths }) => {
    const least = new Map<string, { readonly mm: number; readonly at: Xy }>();
    panel.edges.forEach((edge, e) => {
      if (edge.role !== "feather") return;
      const own = widths[e]!;
      const zones = panel.places.filter((p) => p.edge === e && p.name in zoneNames);
      for (let k = 0; k < own.s.length; k++) {
        const mm = own.mm[k]!;
        const zone = zoneAt(zones, own.s[k]!);
        // Where it goes on narrowing into the next zone, that one is told.
        if (own.alike[k]! < alike || narrows(own, k, beside) || narrows(own, k, -beside)) continue;
        if (mm >= pincersMm - roundingMm || Number.isNaN(mm) || mm >= (least.get(zone)?.mm ?? Infinity)) continue;
        least.set(zone, { mm, at: pointOf(own, k) });
      }
    });
    return [...least].map(([zone, { mm, at }]) => finding("lasting-margin-narrow", { piece: draft.name, zone, widthMm: mm, neededMm: pincersMm }, shownAt(input, panel.name, at)));
  });
}

/** So many places on, about 10 mm, the margin is looked at again. */
const beside = 6;

const narrows = ({ mm, alike: way }: EdgeWidths, k: number, on: number): boolean => k + on >= 0 && k + on < mm.length && way[k + on]! >= alike && mm[k + on]! < mm[k]! - roundingMm;

const zoneNames: Partial<Record<PlaceName, string>> = { toe: "toe", joint: "forepart", waist: "waist", breast: "heel", seat: "heel" };

/** The zone of a feather line by its nearest place: those of the rules (docs/method/pieces.md). */
function zoneAt(places: readonly NetPlace[], s: number): string {
  const nearest = places.reduce<NetPlace | undefined>((a, b) => (a && Math.abs(a.s - s) <= Math.abs(b.s - s) ? a : b), undefined);
  if (!nearest) return "feather line";
  const toe = places.find((p) => p.name === "toe");
  if (toe && Math.abs(s - toe.s) < 1.5 * toeReachMm) return Math.abs(s - toe.s) < toeReachMm / 2 ? "toe" : "sides of the toe";
  const zone = zoneNames[nearest.name]!;
  return zone !== "waist" ? zone : nearest.half === "lateral" ? "outer waist" : "inner waist";
}

/** Where the bottom is looked at, from the joint back, and the places of the feather line that lie there. */
const stations: readonly { readonly where: string; readonly from: PlaceName; readonly to: PlaceName }[] = [
  { where: "joint", from: "joint", to: "joint" },
  { where: "waist", from: "waist", to: "waist" },
  { where: "heel breast", from: "breast", to: "breast" },
  { where: "middle of the heel", from: "breast", to: "seat" },
];

function meeting(input: ToCheck, cut: readonly CutPanel[]): readonly Finding[] {
  const insole = input.drafts.find((d) => d.name === "insole");
  const xs = insole && stationXs(insole);
  if (!xs) return [];
  return stations.flatMap(({ where, from, to }, k) => {
    const across = acrossAt(insole.outline, xs[k]!);
    const inner = marginAt(cut, "medial", from, to);
    const outer = marginAt(cut, "lateral", from, to);
    if (!across || !inner || !outer) return [];
    const widthMm = across[1][1] - across[0][1] + 2 * input.settings.insoleInMm;
    const sumMm = inner.mm + outer.mm;
    if (!(sumMm > widthMm)) return [];
    return [finding("lasting-margins-overlap", { where, innerMm: inner.mm, outerMm: outer.mm, widthMm }, shownAt(input, inner.panel.name, inner.at))];
  });
}

/** Where joint, waist, heel breast and the middle of the heel lie along the insole, by its own marks; the seat is at 0. */
function stationXs({ marks }: Draft): readonly number[] | undefined {
  const middle = (use: "joint" | "heel"): number | undefined => {
    const mark = marks.find((m) => m.kind === "line" && m.use === use);
    return mark?.kind === "line" ? (mark.line.xy[0]! + mark.line.xy[mark.line.xy.length - 2]!) / 2 : undefined;
  };
  const joint = middle("joint");
  const breast = middle("heel");
  return joint === undefined || breast === undefined ? undefined : [joint, (joint + breast) / 2, breast, breast / 2];
}

/** The margin of one half half-way between two places of the same feather line. */
function marginAt(cut: readonly CutPanel[], half: Half, from: PlaceName, to: PlaceName): { readonly mm: number; readonly at: Xy; readonly panel: NetPanel } | undefined {
  for (const { panel, widths } of cut) {
    const on = (name: PlaceName): NetPlace | undefined => panel.places.find((p) => p.name === name && p.half === half && panel.edges[p.edge]!.role === "feather");
    const a = on(from);
    const b = on(to) ?? panel.places.find((p) => p.name === to && p.edge === a?.edge);
    if (!a || !b || a.edge !== b.edge) continue;
    const s = (a.s + b.s) / 2;
    return { mm: widthNear(widths[a.edge]!, s), at: edgePoint(panel.edges[a.edge]!, s), panel };
  }
  return undefined;
}
