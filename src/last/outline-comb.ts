import type { Profile } from "./outline-profile.ts";

export interface DrawnComb {
  /** Height over the ground above the heel end, mm. */
  readonly heightMm: number;
  /** Rise toward the toe, mm a mm. */
  readonly slope: number;
}

/** How far, mm, a comb may be from straight. */
const straight = 0.5;

/**
 * The flat comb seen from the side: the straight that begins behind the back's top edge and goes on toward the toe for as long as the
 * line through it is kept. Where no straight as long as a seventh of the last is there, the line through all up to `usualFront`.
 */
export function drawnComb(profile: Profile, usualFront: number): DrawnComb {
  const begin = backTop(profile) + 4;
  let line = lineThrough(profile, begin, begin + 0.08 * profile.to);
  let front = begin;
  for (let x = begin; x < 0.65 * profile.to; x += 0.5) {
    if (Math.abs(profile.highAt(x) - line.at(x)) > straight) break;
    front = x;
    if (x > begin + 0.1 * profile.to) line = lineThrough(profile, begin, x - 4);
  }
  if (front - begin < profile.to / 7) line = lineThrough(profile, begin, usualFront);
  return { heightMm: line.at(0), slope: line.slope };
}

/** Where the top stops rising steeply from the back. */
function backTop(profile: Profile): number {
  let x = 0.01 * profile.to;
  while (x < 0.2 * profile.to && profile.highAt(x + 1) - profile.highAt(x) > 0.5) x += 0.5;
  return x;
}

function lineThrough(profile: Profile, from: number, to: number): { readonly slope: number; at(x: number): number } {
  const count = 40;
  const middle = (from + to) / 2;
  let [sum, mixed, square] = [0, 0, 0];
  for (let k = 0; k <= count; k++) {
    const x = from + ((to - from) * k) / count;
    sum += profile.highAt(x) / (count + 1);
    mixed += (x - middle) * profile.highAt(x);
    square += (x - middle) * (x - middle);
  }
  const slope = mixed / square;
  return { slope, at: (x) => sum + slope * (x - middle) };
}
