import type { Law } from "#leather/law.ts";

/**
 * One-dimensional truth for membranes on a rigid, smooth sphere: a round flat sheet and the round cap that it becomes, pulled at the rim.
 * Shares nothing with the solvers under test but the law. Plain differential equations along the radius (Dormand and Prince, 5th order,
 * steps from the error), shooting from the pole or from a hole's rim.
 *
 * On the sphere, with T₁, T₂ the true forces per lasted width along and round, θ the angle from the pole:
 *   d(T₁ sin θ)/dθ = T₂ cos θ,   dr/dθ = R/λ₁,   λ₂ = R sin θ / r,   T₁ = λ₁ S₁ / λ₂,   T₂ = λ₂ S₂ / λ₁.
 * At the pole a sheet that is stiffer round than along (or the reverse) is singular: stretches go to 0 or to infinity with a power of the
 * radius. So such a law needs a core of another law, or a hole.
 */
export interface CapAsked {
  readonly law: Law;
  /** Which of the law's axes runs along the radius; the other runs round. */
  readonly radial: "first" | "second";
  /** Radius of the sphere, mm. */
  readonly R: number;
  /** Pull at the rim, outward in the tangent plane, N per mm of the lasted rim; `pullPer: "flat"` per mm of the flat rim. */
  readonly pull: number;
  readonly pullPer?: "lasted" | "flat";
  /** A round core of its own law, alike in all ways, up to this angle (inverse problem) or this flat radius (forward problem). */
  readonly core?: { readonly to: number; readonly law: Law };
  /**
   * A round hole: its rim at this angle (inverse) or at this flat radius (forward). `pull`: T₁ there, N per lasted mm, 0 for a free rim;
   * or `stretch`: λ₂ there, where the rim is held at a given place.
   */
  readonly hole?: { readonly at: number; readonly pull?: number; readonly stretch?: number };
}

/** State of the sheet at one place. */
export interface CapState {
  readonly theta: number;
  readonly radius: number;
  /** Stretches along the radius and round, lasted over flat. */
  readonly along: number;
  readonly round: number;
  /** N per lasted mm, along and round; and pressure on the sphere, N/mm². */
  readonly t1: number;
  readonly t2: number;
  readonly pressure: number;
}

type Pair = readonly [number, number];
type Slope = (s: number, y: Pair) => Pair;

/** Law along and round: S and the derivative of S along by its own strain. */
function stresses({ radial }: Pick<CapAsked, "radial">, law: Law): (along: number, round: number) => readonly [s1: number, s2: number, d11: number] {
  const out = new Float64Array(9);
  return (along, round) => {
    const e1 = (along * along - 1) / 2, e2 = (round * round - 1) / 2;
    if (radial === "first") law.into(out, e1, e2, 0);
    else law.into(out, e2, e1, 0);
    return radial === "first" ? [out[0]!, out[1]!, out[3]!] : [out[1]!, out[0]!, out[4]!];
  };
}

/** λ₁ at which λ₁ S₁ is the force p per flat width while λ₂ is held. */
function alongFor(stress: ReturnType<typeof stresses>, p: number, round: number, guess: number): number {
  let x = guess;
  for (let i = 0; i < 100; i++) {
    const [s1, , d11] = stress(x, round);
    const move = (p - x * s1) / Math.max(s1 + x * x * d11, 1e-3 * d11);
    const next = Math.max(x + move, x / 2);
    if (Math.abs(next - x) <= 4e-16 * x) return next;
    x = next;
  }
  return x;
}

/** y at s1 from y at s0, error per step held to `tolerance` (Dormand and Prince 1980). */
function integrate(slope: Slope, from: number, to: number, start: Pair, tolerance: number): Pair {
  const a = [
    [1 / 5],
    [3 / 40, 9 / 40],
    [44 / 45, -56 / 15, 32 / 9],
    [19372 / 6561, -25360 / 2187, 64448 / 6561, -212 / 729],
    [9017 / 3168, -355 / 33, 46732 / 5247, 49 / 176, -5103 / 18656],
    [35 / 384, 0, 500 / 1113, 125 / 192, -2187 / 6784, 11 / 84],
  ];
  const c = [1 / 5, 3 / 10, 4 / 5, 8 / 9, 1, 1];
  const e = [71 / 57600, 0, -71 / 16695, 71 / 1920, -17253 / 339200, 22 / 525, -1 / 40];
  let s = from, y = start, h = (to - from) / 64;
  for (let count = 0; s < to; count++) {
    h = Math.min(h, to - s);
    const last = h >= to - s;
    const k: Pair[] = [slope(s, y)];
    for (let i = 0; i < 6; i++) {
      const at: Pair = [0, 1].map((j) => y[j]! + h * a[i]!.reduce((sum, w, n) => sum + w * k[n]![j]!, 0)) as unknown as Pair;
      if (i < 5) k.push(slope(s + c[i]! * h, at));
      else {
        k.push(slope(s + h, at));
        const wrong = Math.max(...[0, 1].map((j) => Math.abs(h * e.reduce((sum, w, n) => sum + w * k[n]![j]!, 0)) / (1e-3 + Math.abs(y[j]!))));
        if (!Number.isFinite(wrong) || h < 1e-9 || count > 4000) return [NaN, NaN]; // no sheet goes this way

        if (wrong <= tolerance) {
          y = at;
          s = last ? to : s + h;
        }
        h *= Math.min(4, Math.max(0.2, 0.9 * (tolerance / Math.max(wrong, 1e-30)) ** 0.2));
      }
    }
  }
  return y;
}

/** x where f is 0, from a bracket sought outward of `guess`; f must grow there. Places where f is not a number are outside. */
function root(f: (x: number) => number, guess: number, stride: number): number {
  let low = NaN, high = NaN, fLow = NaN, fHigh = NaN;
  const see = (x: number): void => {
    const y = f(x);
    if (y <= 0 && !(x <= low)) [low, fLow] = [x, y];
    if (y >= 0 && !(x >= high)) [high, fHigh] = [x, y];
  };
  see(guess);
  for (let off = stride; off < 0.8 && !(Number.isFinite(low) && Number.isFinite(high)); off += stride) {
    see(guess + off);
    if (!(Number.isFinite(low) && Number.isFinite(high))) see(guess - off);
  }
  if (!(Number.isFinite(low) && Number.isFinite(high))) throw new Error("no state of the cap carries this pull");
  // Illinois' false position: always a bracket, nearly as fast as the secant method.
  for (let i = 0, side = 0; i < 200 && Math.abs(high - low) > 1e-15 * Math.abs(high); i++) {
    const x = (low * fHigh - high * fLow) / (fHigh - fLow);
    const y = f(x);
    if (y === 0 || x === low || x === high) return x;
    if (y < 0) {
      [low, fLow] = [x, y];
      if (side < 0) fHigh /= 2;
      side = -1;
    } else {
      [high, fHigh] = [x, y];
      if (side > 0) fLow /= 2;
      side = 1;
    }
  }
  return Math.abs(fLow) < Math.abs(fHigh) ? low : high;
}

const tolerance = 1e-13;
const pole = 1e-4;

/** The pieces of the way outward, each with its law. */
function ways(asked: CapAsked, first: number, last: number): { from: number; to: number; stress: ReturnType<typeof stresses> }[] {
  const own = stresses(asked, asked.law);
  if (!asked.core) return [{ from: first, to: last, stress: own }];
  const core = { from: first, to: Math.min(asked.core.to, last), stress: stresses(asked, asked.core.law) };
  return last > asked.core.to ? [core, { from: asked.core.to, to: last, stress: own }] : [core];
}

function mustBeRegular({ law, core, hole }: CapAsked): void {
  if (hole) return;
  const out = new Float64Array(9);
  (core?.law ?? law).into(out, 0, 0, 0);
  if (Math.abs(out[3]! - out[4]!) > 1e-9 * out[3]!) throw new Error("a law that differs along and round is singular at the pole: give it a core or a hole");
}

/** State at the inner end (λ₁, λ₂) for the number that is shot with: λ at the pole, λ₂ at a free hole, λ₁ at a held one. */
function innerEnd({ hole }: CapAsked, stress: ReturnType<typeof stresses>, shot: number): Pair {
  if (!hole) return [shot, shot];
  if (hole.stretch !== undefined) return [shot, hole.stretch];
  return [alongFor(stress, (hole.pull ?? 0) * shot, shot, 1), shot];
}

/**
 * Inverse problem: the flat sheet that becomes the cap of opening angle `alpha` (rad) when its rim is pulled.
 * @returns the flat radius of the rim, mm, and the state at any angle
 */
export function flatOfCap(asked: CapAsked & { readonly alpha: number }): { readonly radius: number; readonly at: (theta: number) => CapState } {
  mustBeRegular(asked);
  const { R, hole } = asked;
  const first = hole?.at ?? pole * Math.min(1, asked.alpha);
  // y = (r/θ, T₁) along s = ln θ.
  const to = (shot: number, theta: number): CapState => {
    const parts = ways(asked, first, Math.max(theta, first));
    const [l1, l2] = innerEnd(asked, parts[0]!.stress, shot);
    let y: Pair = [(R * Math.sin(first)) / (l2 * first), (l1 * parts[0]!.stress(l1, l2)[0]) / l2];
    let along = l1;
    let stress = parts[0]!.stress;
    const seen = (angle: number, [w, t1]: Pair) => {
      const round = (R * Math.sin(angle)) / (w * angle);
      along = alongFor(stress, t1 * round, round, along);
      return { round, along, t2: (round * stress(along, round)[1]) / along };
    };
    for (const part of parts) {
      stress = part.stress;
      y = integrate((s, now) => {
        const angle = Math.exp(s);
        const { t2 } = seen(angle, now);
        return [R / along - now[0], (angle / Math.tan(angle)) * (t2 - now[1])];
      }, Math.log(part.from), Math.log(part.to), y, tolerance);
    }
    const angle = parts[parts.length - 1]!.to;
    const { round, t2 } = seen(angle, y);
    return { theta: angle, radius: y[0] * angle, along, round, t1: y[1], t2, pressure: (y[1] + t2) / R };
  };
  const missing = ({ t1, round }: CapState) => (asked.pullPer === "flat" ? t1 * round : t1) - asked.pull;
  const shot = root((x) => missing(to(x, asked.alpha)), 1, 0.01);
  return { radius: to(shot, asked.alpha).radius, at: (theta) => to(shot, theta) };
}

/**
 * Forward problem: the cap that a flat round sheet of radius `r0` becomes when it is laid on the sphere and its rim is pulled.
 * @returns the opening angle of the rim, rad, and the state at any flat radius
 */
export function capOfFlat(asked: CapAsked & { readonly r0: number }): { readonly alpha: number; readonly at: (r: number) => CapState } {
  mustBeRegular(asked);
  const { R, hole } = asked;
  const first = hole?.at ?? pole * Math.min(R, asked.r0);
  // y = (θ/r, P₁) along s = ln r, with P the forces per flat width: d(r P₁)/dr = P₂ cos θ.
  const to = (shot: number, r: number): CapState => {
    const parts = ways(asked, first, Math.max(r, first));
    const [l1, l2] = innerEnd(asked, parts[0]!.stress, shot);
    let y: Pair = [Math.asin((l2 * first) / R) / first, l1 * parts[0]!.stress(l1, l2)[0]];
    let along = l1;
    let stress = parts[0]!.stress;
    const seen = (radius: number, [v, p1]: Pair) => {
      const round = (R * Math.sin(v * radius)) / radius;
      along = alongFor(stress, p1, round, along);
      return { round, p2: round * stress(along, round)[1] };
    };
    for (const part of parts) {
      stress = part.stress;
      y = integrate((s, now) => {
        const radius = Math.exp(s);
        const { p2 } = seen(radius, now);
        return [along / R - now[0], p2 * Math.cos(now[0] * radius) - now[1]];
      }, Math.log(part.from), Math.log(part.to), y, tolerance);
    }
    const radius = parts[parts.length - 1]!.to;
    const { round, p2 } = seen(radius, y);
    const t1 = y[1] / round, t2 = p2 / along;
    return { theta: y[0] * radius, radius, along, round, t1, t2, pressure: (t1 + t2) / R };
  };
  const missing = ({ t1, round }: CapState) => (asked.pullPer === "flat" ? t1 * round : t1) - asked.pull;
  const shot = root((x) => missing(to(x, asked.r0)), 1, 0.01);
  return { alpha: to(shot, asked.r0).theta, at: (r) => to(shot, r) };
}
