import type { Outline } from "#plane/outline.ts";
import { crossings, extent, Profile } from "./outline-profile.ts";

/** Plane rotation by the unit vector (c, s). */
export function turned({ xy }: Outline, c: number, s: number): Outline {
  const out = new Float64Array(xy.length);
  for (let i = 0; i < xy.length; i += 2) {
    out[i] = c * xy[i]! - s * xy[i + 1]!;
    out[i + 1] = s * xy[i]! + c * xy[i + 1]!;
  }
  return { xy: out };
}

export function moved({ xy }: Outline, x: number, y: number): Outline {
  return { xy: xy.map((v, i) => v + (i % 2 === 0 ? x : y)) };
}

/** Stretched along x and y; negative factors mirror. */
export function scaled({ xy }: Outline, x: number, y: number): Outline {
  return { xy: xy.map((v, i) => v * (i % 2 === 0 ? x : y)) };
}

/** How an outline was read. */
export interface PlacedBottom {
  /** x from the heel end (0) to the toe end along the axis, y positive on the inside of a right last. */
  readonly outline: Outline;
  /** How surely inside and outside are told: difference of what speaks for either, mm. */
  readonly sureMm: number;
}

/**
 * Lays an outline drawn round the bottom along its axis, heel end at x = 0, the inside at +y. The toe is at the broad end; the
 * inside is where the waist is hollow. The axis runs through the middles of the two ends, as the feather line's does from seat
 * point to toe point.
 */
export function placeBottom(outline: Outline): PlacedBottom {
  let now = lengthwise(outline);
  const profile = new Profile(now);
  if (frontShare(profile) < 0.5) now = turned(now, -1, 0);
  for (let round = 0; round < 8; round++) now = axisLevel(now);
  const leans = waistLean(new Profile(now));
  if (leans > 0) now = scaled(now, 1, -1);
  return { outline: now, sureMm: Math.abs(leans) };
}

/** Turned so that the direction of greatest moment of the enclosed area lies along x. */
function lengthwise(outline: Outline): Outline {
  const { xy } = outline;
  const n = xy.length / 2;
  let [area, mx, my, xx, yy, mixed] = [0, 0, 0, 0, 0, 0];
  const [ox, oy] = [xy[0]!, xy[1]!];
  for (let i = 0; i < n; i++) {
    const j = (i + 1) % n;
    const [ax, ay, bx, by] = [xy[2 * i]! - ox, xy[2 * i + 1]! - oy, xy[2 * j]! - ox, xy[2 * j + 1]! - oy];
    const cross = ax * by - bx * ay;
    area += cross / 2;
    mx += (cross * (ax + bx)) / 6;
    my += (cross * (ay + by)) / 6;
    xx += (cross * (ax * ax + ax * bx + bx * bx)) / 12;
    yy += (cross * (ay * ay + ay * by + by * by)) / 12;
    mixed += (cross * (ax * by + 2 * ax * ay + 2 * bx * by + bx * ay)) / 24;
  }
  const [a, b, c] = [xx - (mx * mx) / area, mixed - (mx * my) / area, yy - (my * my) / area];
  const sign = area < 0 ? -1 : 1;
  // Larger eigenvector of the moments [a b; b c].
  const half = (sign * (a - c)) / 2;
  const root = Math.sqrt(half * half + b * b);
  const [vx, vy] = half >= 0 ? [half + root, sign * b] : [sign * b, root - half];
  const long = Math.sqrt(vx * vx + vy * vy);
  return turned(outline, vx / long, -vy / long);
}

/** Share of the area that lies in the half with greater x. */
function frontShare(profile: Profile): number {
  const { from, to } = profile;
  let [front, all] = [0, 0];
  for (let k = 0; k < 200; k++) {
    const t = (k + 0.5) / 200;
    const x = from + t * (to - from);
    const width = profile.highAt(x) - profile.lowAt(x);
    all += width;
    if (t > 0.5) front += width;
  }
  return front / all;
}

/** Heel end to x = 0 and the middles of the chords near both ends to y = 0. */
function axisLevel(outline: Outline): Outline {
  const [from, to] = extent(outline.xy, 0);
  const near = 0.008 * (to - from);
  const middle = (x: number): number => crossings(outline.xy, 0, x).reduce((a, b) => a + b) / 2;
  const [heel, toe] = [middle(from + near), middle(to - near)];
  const dx = to - from - 2 * near;
  const long = Math.sqrt(dx * dx + (toe - heel) * (toe - heel));
  const level = turned(moved(outline, -from, -heel), dx / long, -(toe - heel) / long);
  return moved(level, -extent(level.xy, 0)[0], 0);
}

/** Mean y of the middle between both sides over the waist: negative when +y is the inside. */
function waistLean(profile: Profile): number {
  const { from, to } = profile;
  let sum = 0;
  for (let k = 0; k <= 20; k++) {
    const x = from + (0.33 + 0.01 * k) * (to - from);
    sum += (profile.lowAt(x) + profile.highAt(x)) / 2;
  }
  return sum / 21;
}
