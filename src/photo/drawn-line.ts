import { areaOf, largestLoop, loopsAt, type Loop } from "./contour.ts";
import type { FlatPicture } from "./flatten-picture.ts";
import { filledOverGaps, opened, type Cutting } from "./masks.ts";
import { evenly } from "./smooth-loop.ts";

/** Gaps up to the first are bridged, up to the second where that closes more of the line, mm. */
const bridgedMm = [2.5, 8] as const;
/** Lines that run into the outline from outside are taken off if they are narrower than this, mm. */
const spurMm = 2;
/** What a drawn outline encloses at least, mm². */
export const leastMm2 = 400;
/** How far from the first guess the ink is looked for, and the step, mm. */
const lookMm = 1.6;
const alongMm = 0.25;
const acrossMm = 0.08;

export interface DrawnLine {
  /** Middle of the ink, in cells of the flat picture. */
  readonly loop: Loop;
  /** Length of the loop along which there was no ink, mm. */
  readonly openMm: number;
}

/**
 * A closed line drawn with pen or pencil: first the edge of the ground that it encloses, then across that edge the middle of
 * the ink, weighed by how far each place is from the ground's colour (`far`).
 */
export function middleOfLine(flat: FlatPicture, far: Float32Array, inkFrom: number, cutting: Cutting): DrawnLine | undefined {
  const near = enclosedBy(cutting, bridgedMm[0], flat.stepMm), wide = enclosedBy(cutting, bridgedMm[1], flat.stepMm);
  // The wide bridge rounds inner corners, so it serves only where it closes what was open.
  const rough = near && wide && areaOf(wide) < 1.05 * areaOf(near) ? near : (wide ?? near);
  if (!rough) return undefined;
  const guess = evenly(blunted(evenly(rough, alongMm / flat.stepMm)), alongMm / flat.stepMm);
  const n = guess.length / 2;
  const shift = new Float64Array(n).fill(NaN);
  const side = Math.round(1 / alongMm);
  for (let k = 0; k < n; k++) {
    const a = 2 * ((k - side + n) % n), b = 2 * ((k + side) % n);
    const tx = guess[b]! - guess[a]!, ty = guess[b + 1]! - guess[a + 1]!;
    const long = Math.sqrt(tx * tx + ty * ty);
    shift[k] = inkAcross(flat, far, inkFrom, guess[2 * k]! + cutting.fromI, guess[2 * k + 1]! + cutting.fromJ, ty / long, -tx / long);
  }
  const missing = shift.reduce((sum, s) => sum + (Number.isNaN(s) ? 1 : 0), 0);
  if (missing > n / 3) return undefined;
  bridgeInto(shift);
  const steady = shift.map((_, k) => medianOf([-2, -1, 0, 1, 2].map((d) => shift[(k + d + n) % n]!)));
  const loop = new Float64Array(2 * n);
  for (let k = 0; k < n; k++) {
    const a = 2 * ((k - side + n) % n), b = 2 * ((k + side) % n);
    const tx = guess[b]! - guess[a]!, ty = guess[b + 1]! - guess[a + 1]!;
    const long = Math.sqrt(tx * tx + ty * ty);
    loop[2 * k] = guess[2 * k]! + cutting.fromI + (steady[k]! * ty) / long;
    loop[2 * k + 1] = guess[2 * k + 1]! + cutting.fromJ - (steady[k]! * tx) / long;
  }
  return { loop, openMm: missing * alongMm };
}

/** Edge of the ground that a line encloses when its gaps are bridged. */
function enclosedBy(line: Cutting, gapMm: number, stepMm: number): Loop | undefined {
  const inside = opened(filledOverGaps(line, gapMm / 2 / stepMm), spurMm / 2 / stepMm);
  const outer = largestLoop(loopsAt(Float32Array.from(inside.on), line.width, line.height, 0.5));
  // Ink alone encloses nothing: a loop as narrow as a line is none.
  return outer && areaOf(outer) * stepMm * stepMm > leastMm2 ? outer : undefined;
}

/** How far along the normal the middle of the ink lies, cells; NaN where there is none. */
function inkAcross(flat: FlatPicture, far: Float32Array, inkFrom: number, x: number, y: number, nx: number, ny: number): number {
  const steps = Math.round(lookMm / acrossMm);
  const seen: number[] = [];
  let most = 0;
  for (let k = -steps; k <= steps; k++) {
    const t = (k * acrossMm) / flat.stepMm;
    const v = between(flat, far, x + t * nx, y + t * ny);
    seen.push(v);
    if (v > most) most = v;
  }
  if (most < inkFrom) return NaN;
  // Only the run of ink nearest to the strongest place: another line may lie near.
  const peak = seen.indexOf(most);
  let low = peak, high = peak;
  while (low > 0 && seen[low - 1]! > 0.25 * most) low--;
  while (high < seen.length - 1 && seen[high + 1]! > 0.25 * most) high++;
  let sum = 0, at = 0;
  for (let k = low; k <= high; k++) {
    const w = seen[k]! - 0.25 * most;
    sum += w;
    at += w * (k - steps);
  }
  return ((at / sum) * acrossMm) / flat.stepMm;
}

function between({ width, height }: FlatPicture, far: Float32Array, x: number, y: number): number {
  const cx = Math.min(Math.max(x, 0), width - 1.001), cy = Math.min(Math.max(y, 0), height - 1.001);
  const i = Math.floor(cx), j = Math.floor(cy), k = j * width + i;
  const u = cx - i, v = cy - j;
  return (1 - v) * ((1 - u) * far[k]! + u * far[k + 1]!) + v * ((1 - u) * far[k + width]! + u * far[k + width + 1]!);
}

/** The steps of the cells taken off: each point the mean of five. */
function blunted(xy: Float64Array): Float64Array {
  const n = xy.length;
  return xy.map((_, i) => (xy[(i - 4 + n) % n]! + xy[(i - 2 + n) % n]! + xy[i]! + xy[(i + 2) % n]! + xy[(i + 4) % n]!) / 5);
}

/** Fills runs of NaN by straight lines between their ends; the list is closed. */
function bridgeInto(values: Float64Array): void {
  const n = values.length;
  const first = values.findIndex((v) => !Number.isNaN(v));
  for (let k = 1; k <= n; k++) {
    const at = (first + k) % n;
    if (!Number.isNaN(values[at]!)) continue;
    let end = k;
    while (Number.isNaN(values[(first + end) % n]!)) end++;
    const from = values[(first + k - 1) % n]!, to = values[(first + end) % n]!;
    for (let m = k; m < end; m++) values[(first + m) % n] = from + ((to - from) * (m - k + 1)) / (end - k + 1);
  }
}

const medianOf = (list: number[]): number => list.sort((a, b) => a - b)[list.length >> 1]!;
