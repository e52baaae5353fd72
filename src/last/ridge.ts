import { turns, type Profile } from "./profile.ts";

/** Places along a profile at which ridge strength is told: −reach … +reach mm in equal steps, `2 · reach / step + 1` of them. */
export interface Ruler {
  readonly reach: number;
  readonly step: number;
}
export const rulerStates = ({ reach, step }: Ruler): number => Math.round((2 * reach) / step) + 1;

/** Width of the bell through which ridges are seen on a scan of that roughness, mm. */
export const bellWidth = (noiseMm: number): number => Math.min(2.2, 0.8 + 2.5 * noiseMm);

/**
 * Ridge strength at each place of the ruler: the profile's turning smoothed by a bell of width `blur` (standard deviation, mm),
 * rad/mm. Where the profile is missing the strength is 0. A round edge of even radius gives the middle of its arc.
 */
export function ridgeStrengthInto(out: Float64Array, profile: Profile, ruler: Ruler, blur: number): void {
  out.fill(0);
  const { at, angle } = turns(profile, blur / 4);
  const width = 3 * blur;
  const scale = 1 / (blur * Math.sqrt(2 * Math.PI));
  for (let k = 0; k < at.length; k++) {
    const first = Math.max(0, Math.ceil((at[k]! - width + ruler.reach) / ruler.step));
    const last = Math.min(out.length - 1, Math.floor((at[k]! + width + ruler.reach) / ruler.step));
    for (let i = first; i <= last; i++) {
      const d = (i * ruler.step - ruler.reach - at[k]!) / blur;
      out[i] = out[i]! + angle[k]! * scale * Math.exp(-0.5 * d * d);
    }
  }
}

/** Place of the peak near state i, by the parabola through it and its neighbours; mm along the profile. */
export function peakNear(strength: Float64Array, i: number, ruler: Ruler): number {
  let k = i;
  while (k > 0 && strength[k - 1]! > strength[k]!) k--;
  while (k < strength.length - 1 && strength[k + 1]! > strength[k]!) k++;
  // A climb of more than 1 mm would leave the path that the whole line agreed on.
  if (Math.abs(k - i) * ruler.step > 1) k = i;
  const here = k * ruler.step - ruler.reach;
  if (k === 0 || k === strength.length - 1) return here;
  const [a, b, c] = [strength[k - 1]!, strength[k]!, strength[k + 1]!];
  const bend = a - 2 * b + c;
  return bend < 0 ? here + (0.5 * (a - c) * ruler.step) / bend : here;
}

/** Below this sharpness an edge is soft: a bend of less than 35 degrees within 3 mm. */
export const softBelow = 0.4;

/** Half the width within which a clear edge bends, mm. */
const clearHalf = 1.5;

/**
 * How sharp the strongest edge of a row is: a bend of 25 degrees within 3 mm is no edge (0), one of 50 is a clear one (1). The edge
 * is taken for an even rounding, whose half width follows from its whole turning, its peak and the bell, so that roughness and its
 * wider bell do not make a soft edge look sharp nor a sharp one soft.
 */
export function sharpness(strength: Float64Array, { step }: Ruler, blur: number): number {
  let [peak, turn] = [0, 0];
  for (const v of strength) {
    peak = Math.max(peak, v);
    turn += v * step;
  }
  if (!(turn > 0)) return 0;
  // A rounding of half width h peaks under the bell at turn / 2h · erf(h / blur √2); solved for h by h² = e² − e₀⁴ / e², where e is half the
  // turning over its peak and e₀ the e of an edge of no width: within 2 %.
  const seen = (turn / (2 * peak)) ** 2;
  const half = Math.sqrt(Math.max(clearHalf ** 2, seen - (1.253 * blur) ** 4 / seen));
  const degrees = (turn * (clearHalf / half) * 180) / Math.PI;
  return Math.max(0, Math.min(1, (degrees - 25) / 25));
}
