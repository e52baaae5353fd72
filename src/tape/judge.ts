import { finding, type Finding } from "#base/findings.ts";
import { arcLengths, nearestOn, pointAt } from "#plane/along.ts";
import type { Hollows } from "./bottom.ts";
import { openBefore } from "./half.ts";
import type { Xy } from "./ring.ts";
import type { HalvesApart, TapedBottom, TapedHalf } from "./taped-shell.ts";

/** Bench limits; mm. Common practice, no source, but where said otherwise. */
const limits = {
  /** Low-cut shoes, throat: 1.0 to 1.5 between the two shoes of a pair, a factory's published work instruction of 2014. */
  throat: 1,
  /** The same instruction, back height. */
  back: 1,
  centreBow: 1,
  slitsOpen: 6,
  featherLonger: 4,
  featherShorter: 2,
  /** Mean less half along the topline: above it halves are kept apart. */
  meanOff: 3,
} as const;

/** How far the outer half, mirrored in the centre line, lies from the inner one at the quarters of its topline. */
export function halvesApart(medial: TapedHalf, lateral: TapedHalf): readonly HalvesApart[] {
  const mirrored = { xy: lateral.topline.xy.map((v, i) => (i % 2 === 0 ? v : -v)) };
  const [arc, mirroredArc] = [arcLengths(medial.topline), arcLengths(mirrored)];
  return [0.25, 0.5, 0.75].map((share) => {
    const [x, y] = pointAt(medial.topline, arc, share * arc[arc.length - 1]!);
    return { share, apartMm: nearestOn(mirrored, mirroredArc, x, y).distance };
  });
}

/** What is to be said of both halves and of how they fit together. */
export function judgeHalves(medial: TapedHalf, lateral: TapedHalf, apart: readonly HalvesApart[]): readonly Finding[] {
  const findings: Finding[] = [medial, lateral].flatMap(judgeHalf);
  const [inner, outer] = [medial.lengths, lateral.lengths];
  if (Math.abs(inner.centre - outer.centre) > limits.throat) findings.push(finding("tape-throats-differ", { innerMm: inner.centre, outerMm: outer.centre, mostMm: limits.throat }));
  if (Math.abs(inner.back - outer.back) > limits.back) findings.push(finding("tape-backs-differ", { innerMm: inner.back, outerMm: outer.back, mostMm: limits.back }));
  const widest = apart.reduce((a, b) => (b.apartMm > a.apartMm ? b : a));
  findings.push(finding("tape-halves-apart", { ...widest, mostMm: limits.meanOff }));
  return findings;
}

function judgeHalf({ half, lengths, slits }: TapedHalf): readonly Finding[] {
  const findings: Finding[] = [];
  if (Math.abs(lengths.centreBow) > limits.centreBow) findings.push(finding("tape-centre-bows", { half, bowMm: lengths.centreBow, mostMm: limits.centreBow }));
  const own = slits.filter((s) => s.along !== undefined), stray = slits.filter((s) => s.along === undefined);
  if (stray.length > 0) findings.push(finding("tape-slit-astray", { half, openMm: stray.reduce((sum, s) => sum + s.openMm, 0) }));
  const told = { half, slits: own.length, openMm: lengths.slitsOpen };
  if (lengths.slitsOpen > limits.slitsOpen) findings.push(finding("tape-slits-wide", { ...told, mostMm: limits.slitsOpen }));
  else if (own.length > 0) findings.push(finding("tape-slits", told));
  return findings;
}

/** The feather edges against the edge of the traced bottom. An edge with open slits is as long on the last as it is without them. */
export function judgeAgainstBottom(halves: readonly TapedHalf[], bottom: TapedBottom): readonly Finding[] {
  return halves.flatMap(({ half, lengths }): readonly Finding[] => {
    const longerMm = lengths.feather + lengths.slitsOpen - bottom.halves[half].toToe;
    if (longerMm > limits.featherLonger) return [finding("tape-feather-long", { half, longerMm, mostMm: limits.featherLonger })];
    if (longerMm < -limits.featherShorter) return [finding("tape-feather-short", { half, shorterMm: -longerMm, mostMm: limits.featherShorter })];
    return [];
  });
}

/** The inner side stands higher and, where the bottom was traced, is the hollower one; both against it is a mistake somewhere. */
export function judgeSides(medial: TapedHalf, lateral: TapedHalf, hollow: Hollows | undefined): readonly Finding[] {
  const [innerMm, outerMm] = [lowestHeight(medial).heightMm, lowestHeight(lateral).heightMm];
  if (innerMm >= outerMm - 1) return [];
  return [finding("tape-halves-swapped", { innerMm, outerMm, hollow: hollow !== undefined && hollow.lateral > hollow.medial + clearlyHollower })];
}

/** Waists whose hollows differ by less, mm, do not tell inner from outer. */
export const clearlyHollower = 1.5;

/** A place of the topline and how far it lies from the feather edge, measured on the flat pattern. */
export interface FlatHeight {
  /** From the back point along the topline, mm. */
  readonly along: number;
  readonly heightMm: number;
  /** Below it on the feather edge, from the seat point, less open slits. */
  readonly alongFeatherMm: number;
  readonly at: Xy;
  readonly foot: Xy;
}

/** Height above the feather edge at a running length of the topline from the back point, as a ruler lies on the flat half. */
export function heightAt({ topline, feather, slits }: TapedHalf, along: number): FlatHeight {
  const at = pointAt(topline, arcLengths(topline), along);
  const below = nearestOn(feather, arcLengths(feather), at[0], at[1]);
  return { along, heightMm: below.distance, alongFeatherMm: below.s - openBefore(slits, below.s), at, foot: [below.x, below.y] };
}

/** The lowest place of the topline away from its two ends. */
export function lowestHeight(half: TapedHalf): FlatHeight {
  const total = half.lengths.topline;
  let best: FlatHeight | undefined;
  for (let share = 0.15; share <= 0.75; share += 0.005) {
    const here = heightAt(half, share * total);
    if (!best || here.heightMm < best.heightMm) best = here;
  }
  return best!;
}
