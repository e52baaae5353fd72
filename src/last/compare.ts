import { finding, type Finding } from "#base/findings.ts";
import type { Watch } from "#base/watch.ts";
import { ClosestPoint } from "#mesh/closest.ts";
import { layOn, noMotion, type Motion } from "./compare-align.ts";
import { lineDistance, signedDistances, spreadOf, type Spread } from "./compare-distance.ts";
import type { Last, Measures, Point3 } from "./last.ts";
import { mirrorLast } from "./mirror.ts";
import { placeInWords } from "./place-in-words.ts";
import { pointAt } from "./vector.ts";

export type Verdict = "pair" | "same side" | "no pair";

/** Two lasts held against each other, in the first one's frame, mm. Differences are the second less the first. */
export interface LastComparison {
  readonly verdict: Verdict;
  /** Whether they make one pair. */
  readonly pair: boolean;
  /** Whether the second was mirrored before it was laid on the first. */
  readonly mirrored: boolean;
  /** Leads from the first last's frame to that of the second (mirrored, where it was). */
  readonly motion: Motion;
  /** At every vertex of the first last's mesh: how far the second stands out beyond it (+) or lies inside it (−). */
  readonly distances: Float64Array;
  /** Of these, all below the comb and its edge. */
  readonly surface: Spread & { readonly where: string; readonly place: Point3 };
  readonly feather: { readonly rmsMm: number; readonly maxMm: number; readonly where: string; readonly place: Point3 };
  readonly differences: Measures;
  readonly findings: readonly Finding[];
}

/**
 * What two lasts of one pair may differ by, mm: a finished pair is held to 1 mm at the back, 1.5 mm at the throat and 2 mm along the
 * vamp (factory rule; a millimetre at the topline is seen, two make a shoe slip). Girths: half of the 5 mm from size to size;
 * widths: under half a size and what two scans may read apart; both common practice, no source. Heel height: each scan may read it up to
 * 2 mm off where the comb does not help, our own limit.
 */
export const pairLimits = { surfaceMm: 1, featherMm: 1, lengthMm: 1.5, girthMm: 2.5, widthMm: 1, heelMm: 4 } as const;

const lengths = ["stickLength", "lastLength"] as const;
const girths = ["jointGirth", "waistGirth", "instepGirth", "heelGirth"] as const;
const widths = ["ballWidth", "seatWidth"] as const;

/** Holds two lasts against each other: is the second the other one of the first one's pair? Method, limits: docs/method/compare.md. */
export function compareLasts(a: Last, b: Last, watch: Watch): LastComparison {
  const asTold = laid(a, b, a.side !== b.side, watch);
  const reasons = reasonsAgainst(asTold);
  if (reasons.length === 0) return judged(asTold, a.side === b.side ? "same side" : "pair", []);
  const alike = reasons.every(({ what }) => what === "surface" || what === "feather");
  if (a.side === b.side && alike) {
    // Alike in every measure, told to be for the same foot, and yet unlike: perhaps one of them is told wrong.
    const turned = laid(a, b, true, watch);
    if (reasonsAgainst(turned).length === 0) return judged(turned, "pair", [finding("pair-side-doubtful", { side: a.side })]);
  }
  if (a.side !== b.side && alike) {
    // Told to be for two feet, and yet no mirror: perhaps the same last twice, once told wrong.
    const plain = laid(a, b, false, watch);
    if (reasonsAgainst(plain).length === 0) return judged(plain, "same side", [finding("pair-side-wrong", {})]);
  }
  return judged(asTold, "no pair", [finding("pair-none", { reasons })]);
}

type Laid = Omit<LastComparison, "verdict" | "pair" | "findings">;

function laid(a: Last, b: Last, mirrored: boolean, watch: Watch): Laid {
  const other = mirrored ? mirrorLast(b) : b;
  const still = new ClosestPoint(other.mesh);
  const motion = layOn(a.mesh, still, noMotion, watch);
  const distances = signedDistances(a.mesh, still, motion, watch);
  const top = combEdge(a, other, motion);
  const surface = spreadOf(a.mesh, distances, (i) => a.mesh.positions[3 * i + 2]! < top);
  const place = pointAt(a.mesh.positions, surface.maxAt);
  const { rmsMm, maxMm, maxAt } = lineDistance(a.feather.points, other.feather.points, motion);
  return {
    mirrored,
    motion,
    distances,
    surface: { ...surface, where: placeInWords(a, place), place },
    feather: { rmsMm, maxMm, where: placeInWords(a, maxAt), place: maxAt },
    differences: Object.fromEntries(Object.entries(a.measures).map(([name, v]: [string, number]) => [name, b.measures[name as keyof Measures] - v])) as unknown as Measures,
  };
}

/** Height, on the first, above which the comb of either begins, with 4 mm for its edge. Combs are cut anywhere and often damaged. */
function combEdge(a: Last, b: Last, { rotation, translation }: Motion): number {
  const ends = [a.centreRidge.points, a.backCurve.points].map((p) => p[p.length - 1]!);
  // Back from the second one's frame: rotation turned over.
  for (const { points } of [b.centreRidge, b.backCurve]) {
    const d = pointAt(points, points.length / 3 - 1).map((v, k) => v - translation[k]!);
    ends.push(rotation[2]! * d[0]! + rotation[5]! * d[1]! + rotation[8]! * d[2]!);
  }
  return Math.min(...ends) - 4;
}

/** What speaks against a pair, as data of a sentence. */
export interface PairReason {
  readonly what: "surface" | "feather" | keyof Measures;
  readonly byMm: number;
  readonly limitMm: number;
}

function reasonsAgainst({ surface, feather, differences }: Laid): PairReason[] {
  const told: PairReason[] = [
    ...lengths.map((what) => ({ what, byMm: differences[what], limitMm: pairLimits.lengthMm })),
    ...girths.map((what) => ({ what, byMm: differences[what], limitMm: pairLimits.girthMm })),
    ...widths.map((what) => ({ what, byMm: differences[what], limitMm: pairLimits.widthMm })),
    { what: "heelHeight", byMm: differences.heelHeight, limitMm: pairLimits.heelMm },
    { what: "surface", byMm: surface.p95Mm, limitMm: pairLimits.surfaceMm },
    { what: "feather", byMm: feather.rmsMm, limitMm: pairLimits.featherMm },
  ];
  const over = ({ byMm, limitMm }: PairReason): number => Math.abs(byMm) / limitMm;
  return told.filter((r) => over(r) > 1).sort((r, s) => over(s) - over(r));
}

function judged(of: Laid, verdict: Verdict, findings: readonly Finding[]): LastComparison {
  const more: Finding[] = [...findings];
  if (verdict === "same side") more.push(finding("pair-same-side", {}));
  if (verdict === "pair") more.push(finding("pair-true", { p95Mm: of.surface.p95Mm }));
  const { maxMm, where, place } = of.surface;
  // A pair may well be built up for one foot: that is said, not held against it.
  if (verdict !== "no pair" && Math.abs(maxMm) > pairLimits.surfaceMm) more.push(finding("pair-differs-at", { byMm: maxMm, where }, place));
  return { ...of, verdict, pair: verdict === "pair", findings: more };
}
