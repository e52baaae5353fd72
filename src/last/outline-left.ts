import { arcLengths, nearestOn } from "#plane/along.ts";
import type { Outline, Polyline } from "#plane/outline.ts";
import { extent } from "./outline-profile.ts";

const outlineRegions = ["heel", "waist", "forepart", "toe"] as const;
type OutlineRegion = (typeof outlineRegions)[number];

/** How far a form's silhouette stays from the outline it follows, mm. */
export interface OutlineLeft {
  readonly rmsMm: number;
  readonly worstMm: number;
  /** Where the worst place is. */
  readonly where: OutlineRegion;
  readonly byRegion: Readonly<Record<OutlineRegion, number>>;
}

/** Distances of the drawn points (their heel end at x = 0) from the form's silhouette, root mean square by region. */
export function outlineLeft(drawn: Outline, silhouette: Outline): OutlineLeft {
  const [from, to] = extent(silhouette.xy, 0);
  const loop: Polyline = { xy: Float64Array.from([...silhouette.xy, silhouette.xy[0]!, silhouette.xy[1]!]) };
  const arc = arcLengths(loop);
  const sums = outlineRegions.map(() => ({ square: 0, count: 0 }));
  let [worstMm, where] = [0, "heel" as OutlineRegion];
  for (let i = 0; i < drawn.xy.length; i += 2) {
    const share = drawn.xy[i]! / (to - from);
    const region = share < 0.25 ? 0 : share < 0.55 ? 1 : share < 0.85 ? 2 : 3;
    const { distance } = nearestOn(loop, arc, drawn.xy[i]! + from, drawn.xy[i + 1]!);
    sums[region]!.square += distance * distance;
    sums[region]!.count++;
    if (distance > worstMm) [worstMm, where] = [distance, outlineRegions[region]!];
  }
  const rms = (square: number, count: number): number => (count > 0 ? Math.sqrt(square / count) : 0);
  const byRegion = Object.fromEntries(outlineRegions.map((name, k) => [name, rms(sums[k]!.square, sums[k]!.count)])) as Record<OutlineRegion, number>;
  return { rmsMm: rms(sums.reduce((a, s) => a + s.square, 0), drawn.xy.length / 2), worstMm, where, byRegion };
}
