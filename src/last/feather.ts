import type { Watch } from "#base/watch.ts";
import { Sectioner } from "#mesh/section.ts";
import { cheapestCycle } from "./cheapest-cycle.ts";
import { closedArc, closedTangents, resampleClosed, smoothClosed } from "./closed-curve.ts";
import { fairClosed } from "./feather-fair.ts";
import { firstFeather } from "./feather-first.ts";
import { partNear } from "./near-line.ts";
import { profileAt, profilePoint, type Profile, type Station } from "./profile.ts";
import { bellWidth, peakNear, ridgeStrengthInto, rulerStates, sharpness, softBelow, type Ruler } from "./ridge.ts";
import { add, cross, pointAt, scale, unit } from "./vector.ts";

/** A closed line round the bottom, counter-clockwise from above, and how sharp the edge is at each point, 0 … 1. */
export interface FoundFeather {
  readonly points: Float64Array;
  readonly confidence: Float64Array;
  /** Share of its length at which the scan has no surface; the line is carried over. */
  readonly missing: number;
}

/** What a closed path pays for going aside at a slope (mm aside a mm along): this · slope², against ridge strength in rad/mm. */
const bend = 1;

/** Cuts are averaged along the edge under a bell of this width a mm of roughness, and at most this, mm. */
const alongByNoise = 12;
const mostAlong = 2.5;

/** How far the line may be moved from where it was found so that it runs fair, mm: by this, and this much a mm of roughness. */
const room = 0.015;
const roomByNoise = 0.85;
const mostRoom = 0.3;

/**
 * Finds the edge between bottom and wall on a last that lies with z up and x toward the toe (pose right to a few degrees, mm).
 * From a first line it cuts the last across at every millimetre, tells how strongly each profile bends, and takes the closed
 * line that gathers the most ridge and bends the least; then again across the line so found. Method: docs/method/last.md.
 * @param noiseMm roughness of the scan; wider windows are taken where it is rough
 */
export function findFeather(cutter: Sectioner, length: number, noiseMm: number, watch: Watch): FoundFeather {
  const first = evenly(firstFeather(cutter, length), 2);
  const line = smoothClosed(first, new Float64Array(first.length / 3).fill(1), 2, 5);
  const near = new Sectioner(partNear(cutter.mesh, line, 14));
  // Coarse to fine: a wide look at every second millimetre first, then a narrow one along a line that already runs on the edge.
  const blur = bellWidth(noiseMm);
  watch("feather line", 0.3);
  const along = Math.min(mostAlong, alongByNoise * noiseMm);
  const wide = across(near, line, { step: 2, reach: 10, blur: Math.max(1.6, blur), along, width: 2.5 });
  watch("feather line", 0.5);
  const found = across(near, evenly(wide.points, 1), { step: 1, reach: 5, blur, along, width: 1 + 5 * noiseMm });
  return { ...found, points: fairClosed(found.points, Math.min(mostRoom, room + roomByNoise * noiseMm)) };
}

/** A soft edge is looked at through a bell of this width, mm. */
const softBlur = 2.5;

/** One look: distance of its stations, how far to either side it looks, width of the bell across and along it and of the smoothing after; mm. */
interface Look {
  readonly step: number;
  readonly reach: number;
  readonly blur: number;
  readonly along: number;
  readonly width: number;
}

function evenly(points: Float64Array, step: number): Float64Array {
  const arc = closedArc(points);
  const total = arc[arc.length - 1]!;
  return resampleClosed(points, new Float64Array(points.length / 3), Math.round(total / step), 0).points;
}

/** One look across a line: strongest closed ridge within the ruler, to a fraction of an edge, smoothed. */
function across(cutter: Sectioner, line: Float64Array, look: Look): FoundFeather {
  const { step, reach, blur, width } = look;
  const ruler: Ruler = { reach, step: 0.25 };
  const stations = stationsAlong(line);
  const states = rulerStates(ruler);
  // Beyond the ruler the profile still bends the bell's sum: cut a little more than is looked at.
  const profiles = stations.map((station) => profileAt(cutter.cut(station.at, cross(station.out, station.up)), station, ruler.reach + 2 * Math.max(blur, softBlur)));
  const strength = alongRing(rowsOf(profiles, ruler, blur), states, look.along / step);
  const confidence = Float64Array.from(profiles, (profile, i) => (profile ? sharpness(strength.subarray(i * states, (i + 1) * states), ruler, blur) : 0));
  // A wide rounding has no peak of its own under a narrow bell, only chance ones.
  if (blur < softBlur && confidence.some((c) => c < softBelow)) {
    const wide = alongRing(rowsOf(profiles, ruler, softBlur), states, look.along / step);
    confidence.forEach((c, i) => c < softBelow && strength.set(wide.subarray(i * states, (i + 1) * states), i * states));
  }
  const path = strongestPath(strength, states, (bend * ruler.step ** 2) / step ** 2, Math.round((1.5 * step) / ruler.step));
  const points = new Float64Array(line.length);
  const weights = new Float64Array(stations.length);
  stations.forEach((station, i) => {
    const row = strength.subarray(i * states, (i + 1) * states);
    const profile = profiles[i];
    const s = profile ? peakNear(row, path[i]!, ruler) : path[i]! * ruler.step - ruler.reach;
    const [u, v] = profile ? profilePoint(profile, s) : [s, 0];
    points.set(add(station.at, add(scale(station.out, u), scale(station.up, v))), 3 * i);
    weights[i] = 0.02 + confidence[i]!;
  });
  const missing = profiles.filter((p) => p === undefined).length / stations.length;
  return { points: smoothClosed(points, weights, step, width), confidence, missing };
}

/** Ridge strength at every station, row by row; 0 where there is no profile. */
function rowsOf(profiles: readonly (Profile | undefined)[], ruler: Ruler, blur: number): Float64Array {
  const states = rulerStates(ruler);
  const out = new Float64Array(profiles.length * states);
  profiles.forEach((profile, i) => profile && ridgeStrengthInto(out.subarray(i * states, (i + 1) * states), profile, ruler, blur));
  return out;
}

/** Every row averaged with its neighbours round the ring under a bell of `width` rows. An edge runs on from cut to cut, chance ridges do not. */
function alongRing(rows: Float64Array, states: number, width: number): Float64Array {
  const reach = Math.round(2.5 * width);
  if (reach === 0) return rows;
  const n = rows.length / states;
  const out = new Float64Array(rows.length);
  const bell = Float64Array.from({ length: 2 * reach + 1 }, (_, k) => Math.exp(-0.5 * ((k - reach) / width) ** 2));
  const sum = bell.reduce((a, b) => a + b, 0);
  for (let i = 0; i < n; i++)
    for (let k = -reach; k <= reach; k++) {
      const from = ((i + k + n) % n) * states;
      const weight = bell[k + reach]! / sum;
      for (let s = 0; s < states; s++) out[i * states + s] = out[i * states + s]! + weight * rows[from + s]!;
    }
  return out;
}

/** Planes square to the line; `out` level and away from the inside of the line, `up` square to both. */
function stationsAlong(line: Float64Array): Station[] {
  const tangents = closedTangents(line, 2);
  return Array.from({ length: line.length / 3 }, (_, i) => {
    const along = pointAt(tangents, i);
    const out = unit(cross(along, [0, 0, 1]));
    return { at: pointAt(line, i), out, up: cross(out, along) };
  });
}

/**
 * The cheapest closed cycle, held first where the ridge is strongest. The strongest of all may be a chance one beside the edge, so it is
 * gone round again, held half way round where the first path ran, which a single chance ridge does not reach.
 */
function strongestPath(strength: Float64Array, states: number, bend: number, reach: number): Uint32Array {
  let best = 0;
  for (let i = 1; i < strength.length; i++) if (strength[i]! > strength[best]!) best = i;
  const stations = strength.length / states;
  const start = Math.floor(best / states);
  const first = cheapestCycle(strength, states, bend, reach, start, best % states);
  const opposite = (start + (stations >> 1)) % stations;
  return cheapestCycle(strength, states, bend, reach, opposite, first[opposite]!);
}
