import { finding } from "#base/findings.ts";
import { Refusal } from "#base/refusal.ts";
import { ClosestPoint } from "#mesh/closest.ts";
import type { Sectioner } from "#mesh/section.ts";
import { nearestOnRing } from "./centre-section.ts";
import { closedArc, closedTangents, pointAtIndex, valueAt } from "./closed-curve.ts";
import { closedSpline } from "./closed-spline.ts";
import type { FoundFeather } from "./feather.ts";
import type { Point3 } from "./last.ts";
import { nearestOnProfile, profileAt, profilePoint, type Profile, type Station } from "./profile.ts";
import { bellWidth, peakNear, ridgeStrengthInto, rulerStates, sharpness, type Ruler } from "./ridge.ts";
import { add, cross, distance, dot, pointAt, scale, sub, unit } from "./vector.ts";

/** A point farther than this from the line as found, mm, is no place of the feather edge. */
const farthestMm = 40;
/** Two points may not ask the line to go aside faster than this, mm aside a mm along. */
const steepest = 2;
/** Over about this length, mm, the line leaves a point on a clear edge; on a soft one it goes on for {@link softCare}^(−1/4) times as far. */
const leaveMm = 8;
const softCare = 3e-5;
/** The weight of a point of the maker's: it is missed by a hundredth of a per cent, and that is made good after. */
const held = 1e5;
/** Between two points that both lie this far off the line and no farther apart than that, mm, the edge found there is not believed. */
const offMm = 1;
const togetherMm = 120;
/** What is left of a move under this, mm, is none: elsewhere the line stays exactly as found. */
const noMove = 0.01;
/** An edge is taken up again where one this clear lies within this distance, mm, of the moved line. */
const clear = 0.5;
const nearMm = 2;

export interface PulledFeather extends FoundFeather {
  /** The maker's points as they lie on the scan, in the order of the line. */
  readonly through: readonly Point3[];
  /** How far the line was moved at most, mm. */
  readonly mostMm: number;
}

/** One of the maker's points on the scan, at its place along the line. */
interface Pull {
  /** Its number in the order said, from 1. */
  readonly number: number;
  readonly point: Point3;
  /** Place along the line as found, index with fraction, and running length, mm. */
  readonly at: number;
  readonly arc: number;
  readonly apart: number;
}

/** A place across the line: the cut there, and how far along that cut the maker's point lies. */
interface Place {
  readonly station: Station;
  readonly profile: Profile | undefined;
  readonly confidence: number;
  readonly pull: Pull | undefined;
  readonly aside: number;
}

/**
 * Leads a line through the maker's points, each put on the scan. The move is counted along the cut square to the line. It runs out
 * quickly where the edge is clear and runs on where it is soft; a clear edge near the moved line is taken up again. Farther off the
 * line stays as found. The order of the points does not matter.
 * @param cutter cuts the scan the line lies on, mm
 * @param noiseMm roughness of the scan
 * @throws Refusal when a point lies far off the line, or two cannot both lie on one line
 */
export function pullFeather(cutter: Sectioner, found: FoundFeather, points: readonly Point3[], noiseMm: number): PulledFeather {
  const blur = bellWidth(noiseMm);
  const pulls = sorted(cutter, found.points, points);
  const places = placesAlong(cutter, found, pulls, blur);
  const total = closedArc(found.points).at(-1)!;
  const trust = trustOf(places, total);
  const guide = spread(places, places.map((p) => [p.aside, 0, 0]), trust, total);
  const ridges = places.map((place, i) => ridgeNear(place, guide[3 * i]!, blur));
  const again = ridges.map((r, i) => (r ? r.confidence ** 2 : trust[i]!));
  const asides = spread(places, places.map((p, i) => [p.pull ? p.aside : (ridges[i]?.aside ?? 0), 0, 0]), again, total);
  const moved = places.map((place, i) => movedBy(place, asides[3 * i]!));
  // What the cut cannot give: a scan with a gap, a line smoothed off the scan, the weight that is not endless.
  const rest = spread(places, places.map((p, i) => (p.pull ? sub(p.pull.point, moved[i]!) : [0, 0, 0])), places.map(() => 1), total);
  const line = Float64Array.from(moved.flatMap((p, i) => add(p, pointAt(rest, i))));
  return {
    points: line,
    confidence: Float64Array.from(places, (p, i) => ridges[i]?.confidence ?? p.confidence),
    missing: found.missing,
    through: pulls.map((p) => p.point),
    mostMm: Math.max(...places.map((p, i) => distance(p.station.at, pointAt(line, i)))),
  };
}

function sorted(cutter: Sectioner, line: Float64Array, points: readonly Point3[]): Pull[] {
  const scan = new ClosestPoint(cutter.mesh);
  const arc = closedArc(line);
  const pulls = points.map((said, i): Pull => {
    const { point, distance: off } = scan.find(said);
    const index = nearestOnRing(line, point) % (line.length / 3);
    const on = pointAtIndex(line, index);
    const mm = Math.max(off, distance(said, on));
    if (mm > farthestMm) throw new Refusal(finding("pull-far-off", { point: i + 1, of: points.length, mm, mostMm: farthestMm }));
    const whole = Math.floor(index);
    return { number: i + 1, point, at: index, arc: arc[whole]! + (index - whole) * (arc[whole + 1]! - arc[whole]!), apart: distance(point, on) };
  });
  pulls.sort((a, b) => a.arc - b.arc || a.point[0] - b.point[0] || a.point[1] - b.point[1] || a.point[2] - b.point[2]);
  const single = pulls.filter((p, i) => i === 0 || distance(p.point, pulls[i - 1]!.point) > 0.05);
  refuseZigzag(single, arc.at(-1)!, line, points.length);
  return single;
}

/** Points so near along the line and so far apart across it that no edge runs through both. */
function refuseZigzag(pulls: readonly Pull[], total: number, line: Float64Array, of: number): void {
  for (let i = 0; pulls.length > 1 && i < pulls.length; i++) {
    const [a, b] = [pulls[i]!, pulls[(i + 1) % pulls.length]!];
    const along = b.arc - a.arc + (i + 1 === pulls.length ? total : 0);
    const across = distance(sub(a.point, pointAtIndex(line, a.at)), sub(b.point, pointAtIndex(line, b.at)));
    if (across <= steepest * along || across < 1) continue;
    const [one, other] = [Math.min(a.number, b.number), Math.max(a.number, b.number)];
    throw new Refusal(finding("pulls-zigzag", { one, other, of, alongMm: along, acrossMm: across }));
  }
}

/** The points of the line, each of the maker's in the stead of the one nearest to it along the line. */
function placesAlong(cutter: Sectioner, { points, confidence }: FoundFeather, pulls: readonly Pull[], blur: number): Place[] {
  const n = confidence.length;
  const tangents = closedTangents(points, 2);
  const reach = 5 + 2 * blur + 1.6 * Math.max(...pulls.map((p) => p.apart));
  const near = (i: number): boolean => pulls.some((p) => Math.abs(((p.at - i + 1.5 * n) % n) - n / 2) < 0.5);
  const whole = Array.from({ length: n }, (_, i) => ({ at: i, pull: undefined as Pull | undefined })).filter(({ at }) => !near(at));
  const all = [...whole, ...pulls.map((pull) => ({ at: pull.at, pull: pull as Pull | undefined }))].sort((a, b) => a.at - b.at);
  return all.map(({ at, pull }) => {
    const base = pointAtIndex(points, at);
    const [x, y, z] = valueAt(tangents, 3, at);
    const station = stationAt(base, unit([x!, y!, z!]), pull?.point ?? base);
    const profile = profileAt(cutter.cut(station.at, cross(station.out, station.up)), station, reach);
    const off = sub(pull?.point ?? base, base);
    const aside = pull && profile ? nearestOnProfile(profile, dot(off, station.out), dot(off, station.up)) : 0;
    return { station, profile, confidence: valueAt(confidence, 1, at)[0]!, pull, aside };
  });
}

/** The plane across the line at a place, turned the little it takes to hold a point as well. */
function stationAt(at: Point3, along: Point3, through: Point3): Station {
  const d = sub(through, at);
  const dd = dot(d, d);
  const normal = dd > 0.01 ? unit(sub(along, scale(d, dot(along, d) / dd))) : along;
  const out = unit(cross(normal, [0, 0, 1]));
  return { at, out, up: cross(out, normal) };
}

/** How much the edge found at each place is believed: by its sharpness, not at all between two points that both lie off it. */
function trustOf(places: readonly Place[], total: number): number[] {
  const trust = places.map((p) => softCare + p.confidence ** 2);
  const at = places.flatMap((p, i) => (p.pull ? [i] : []));
  at.forEach((i, k) => {
    const j = at[(k + 1) % at.length]!;
    const [a, b] = [places[i]!.pull!, places[j]!.pull!];
    const along = (b.arc - a.arc + total) % total;
    if (i === j || along > togetherMm || a.apart < offMm || b.apart < offMm) return;
    for (let m = i; m !== j; m = (m + 1) % places.length) trust[m] = softCare;
  });
  return trust;
}

/** Spreads values said at the maker's points (three numbers a place) along the line; elsewhere each place holds to its own by its weight. */
function spread(places: readonly Place[], values: readonly Point3[], weights: readonly number[], total: number): Float64Array {
  const step = total / places.length;
  const all = Float64Array.from(places, (p, i) => (p.pull ? held : weights[i]!));
  const out = closedSpline(Float64Array.from(values.flat()), all, (leaveMm / step) ** 4, "second");
  return out.map((v) => Math.sign(v) * Math.max(0, Math.abs(v) - noMove));
}

/** A clear edge near the moved line, where that has left the line as found; its place along the cut and how sharp it is. */
function ridgeNear({ profile, pull }: Place, aside: number, blur: number): { readonly aside: number; readonly confidence: number } | undefined {
  if (pull || !profile || Math.abs(aside) < offMm) return undefined;
  const shifted = { ...profile, s: profile.s.map((s) => s - aside) };
  const ruler: Ruler = { reach: 5, step: 0.25 };
  const row = new Float64Array(rulerStates(ruler));
  ridgeStrengthInto(row, shifted, ruler, blur);
  const confidence = sharpness(row, ruler, blur);
  let top = 0;
  for (let i = 1; i < row.length; i++) if (row[i]! > row[top]!) top = i;
  const s = peakNear(row, top, ruler);
  return confidence > clear && Math.abs(s) < nearMm ? { aside: aside + s, confidence } : undefined;
}

function movedBy({ station, profile }: Place, aside: number): Point3 {
  if (!profile || aside === 0) return station.at;
  const [u0, v0] = profilePoint(profile, 0);
  const [u, v] = profilePoint(profile, aside);
  return add(station.at, add(scale(station.out, u - u0), scale(station.up, v - v0)));
}
