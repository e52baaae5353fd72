import type { Section } from "#mesh/section.ts";
import type { Point3 } from "./last.ts";

/** A plane across the feather line: `at` near the edge, `out` and `up` span it, unit and square to each other. */
export interface Station {
  readonly at: Point3;
  readonly out: Point3;
  readonly up: Point3;
}

/**
 * The outline of the last in a station's plane near the edge, from the bottom (s < 0) over the edge to the wall (s > 0).
 * (u[i], v[i]): along out and up from `at`, mm; s[i]: running length, 0 at the point nearest to `at`.
 */
export interface Profile {
  readonly u: Float64Array;
  readonly v: Float64Array;
  readonly s: Float64Array;
}

/** Takes from the sections of a station's plane the run within `reach` mm of the point nearest to the station. */
export function profileAt(sections: readonly Section[], station: Station, reach: number): Profile | undefined {
  let nearest: { chain: Chain; segment: number; share: number } | undefined;
  let best = reach * reach;
  for (const section of sections) {
    const chain = flatten(section, station);
    const found = nearestOn(chain);
    if (found && found.squared < best) {
      best = found.squared;
      nearest = { chain, ...found };
    }
  }
  return nearest && cutRun(nearest.chain, nearest.segment, nearest.share, reach);
}

interface Chain {
  readonly u: Float64Array;
  readonly v: Float64Array;
  readonly closed: boolean;
}

function flatten({ points, closed }: Section, { at, out, up }: Station): Chain {
  const n = points.length / 3;
  const u = new Float64Array(n);
  const v = new Float64Array(n);
  for (let i = 0; i < n; i++) {
    const x = points[3 * i]! - at[0];
    const y = points[3 * i + 1]! - at[1];
    const z = points[3 * i + 2]! - at[2];
    u[i] = x * out[0] + y * out[1] + z * out[2];
    v[i] = x * up[0] + y * up[1] + z * up[2];
  }
  return { u, v, closed };
}

/** The point of the chain nearest to (0, 0): segment from point i to i + 1 and the share along it. */
function nearestOn({ u, v, closed }: Chain): { segment: number; share: number; squared: number } | undefined {
  const n = u.length;
  let squared = Infinity;
  let segment = -1;
  let share = 0;
  for (let i = 0; i < (closed ? n : n - 1); i++) {
    const j = (i + 1) % n;
    const du = u[j]! - u[i]!;
    const dv = v[j]! - v[i]!;
    const long = du * du + dv * dv;
    const t = long > 0 ? Math.max(0, Math.min(1, -(u[i]! * du + v[i]! * dv) / long)) : 0;
    const a = u[i]! + t * du;
    const b = v[i]! + t * dv;
    if (a * a + b * b < squared) {
      squared = a * a + b * b;
      segment = i;
      share = t;
    }
  }
  return segment < 0 ? undefined : { segment, share, squared };
}

/** The run from `reach` before to `reach` after a place, turned so that it goes out and up. */
function cutRun(chain: Chain, segment: number, share: number, reach: number): Profile {
  const ahead = walk(chain, segment, share, reach, 1);
  const behind = walk(chain, segment, share, reach, -1);
  const u = [...behind.u.reverse(), ...ahead.u.slice(1)];
  const v = [...behind.v.reverse(), ...ahead.v.slice(1)];
  const s = [...behind.s.map((x) => -x).reverse(), ...ahead.s.slice(1)];
  // Bottom to wall gains along out and up together; a chain may run either way.
  const gain = u[u.length - 1]! - u[0]! + v[v.length - 1]! - v[0]!;
  if (gain >= 0) return { u: Float64Array.from(u), v: Float64Array.from(v), s: Float64Array.from(s) };
  return { u: Float64Array.from(u.reverse()), v: Float64Array.from(v.reverse()), s: Float64Array.from(s.reverse(), (x) => -x) };
}

/** Points from a place on a chain onward (direction +1) or back (−1), with running length, up to `reach`. */
function walk({ u, v, closed }: Chain, segment: number, share: number, reach: number, direction: 1 | -1): { u: number[]; v: number[]; s: number[] } {
  const n = u.length;
  const next = (segment + 1) % n;
  let a = u[segment]! + share * (u[next]! - u[segment]!);
  let b = v[segment]! + share * (v[next]! - v[segment]!);
  const out = { u: [a], v: [b], s: [0] };
  let length = 0;
  let i = direction > 0 ? segment + 1 : segment;
  for (let step = 0; step < n && length < reach; step++, i += direction) {
    if (!closed && (i < 0 || i >= n)) break;
    const k = ((i % n) + n) % n;
    const du = u[k]! - a;
    const dv = v[k]! - b;
    const d = Math.sqrt(du * du + dv * dv);
    if (d < 1e-9) continue;
    const part = Math.min(1, (reach - length) / d);
    a += du * part;
    b += dv * part;
    length += d * part;
    out.u.push(a);
    out.v.push(b);
    out.s.push(length);
  }
  return out;
}

/** Point of the profile at running length s, (u, v). */
export function profilePoint({ u, v, s }: Profile, at: number): readonly [number, number] {
  const n = s.length;
  let i = 0;
  while (i < n - 2 && s[i + 1]! < at) i++;
  const step = s[i + 1]! - s[i]!;
  const t = step > 0 ? Math.max(0, Math.min(1, (at - s[i]!) / step)) : 0;
  return [u[i]! + t * (u[i + 1]! - u[i]!), v[i]! + t * (v[i + 1]! - v[i]!)];
}

/** Running length of the place of the profile nearest to (u, v). */
export function nearestOnProfile(profile: Profile, u: number, v: number): number {
  const found = nearestOn({ u: profile.u.map((x) => x - u), v: profile.v.map((y) => y - v), closed: false });
  if (!found) return 0;
  const [a, b] = [profile.s[found.segment]!, profile.s[found.segment + 1]!];
  return a + found.share * (b - a);
}

/** Cosine of the sharpest turn that is one of the surface and not a spike of roughness: 127 degrees. */
const sharpest = -0.6;

/**
 * Where the profile turns: place and angle (rad, positive where it bends as an edge between bottom and wall does) at every
 * inner point. Points nearer to each other than `apart`, mm, are passed over, and so are spikes: there a rough surface may even run
 * backward, and one turn told the wrong way round would outweigh an edge.
 */
export function turns(profile: Profile, apart: number): { readonly at: Float64Array; readonly angle: Float64Array } {
  const { u, v, s } = profile;
  const kept = withoutSpikes(profile, apart);
  const n = Math.max(0, kept.length - 2);
  const at = new Float64Array(n);
  const angle = new Float64Array(n);
  for (let k = 0; k < n; k++) {
    const [a, b, c] = [kept[k]!, kept[k + 1]!, kept[k + 2]!];
    const [au, av] = [u[b]! - u[a]!, v[b]! - v[a]!];
    const [bu, bv] = [u[c]! - u[b]!, v[c]! - v[b]!];
    at[k] = s[b]!;
    angle[k] = Math.atan2(au * bv - av * bu, au * bu + av * bv);
  }
  return { at, angle };
}

function withoutSpikes({ u, v, s }: Profile, apart: number): number[] {
  const kept: number[] = [];
  const square = (a: number, b: number): number => (u[b]! - u[a]!) ** 2 + (v[b]! - v[a]!) ** 2;
  const isSpike = (a: number, b: number, c: number): boolean =>
    (u[b]! - u[a]!) * (u[c]! - u[b]!) + (v[b]! - v[a]!) * (v[c]! - v[b]!) < sharpest * Math.sqrt(square(a, b) * square(b, c));
  for (let i = 0; i < s.length; i++) {
    while (kept.length > 1 && isSpike(kept.at(-2)!, kept.at(-1)!, i)) kept.pop();
    if (kept.length === 0 || square(kept.at(-1)!, i) >= apart * apart) kept.push(i);
  }
  return kept;
}
