import { BorderedBand } from "./bordered-band.ts";
import type { ShortRows } from "./short-rows.ts";

/** Least ½ uᵀHu − gᵀu with A u ≥ b and no |uᵢ| greater than `reach`; H comes as a band, not yet factored. */
export interface QuadraticProgram {
  readonly quadratic: BorderedBand;
  readonly linear: Float64Array;
  readonly rows: ShortRows;
  readonly bounds: Float64Array;
  /** Only told to know early that there is no solution; it is not itself kept as a bound. */
  readonly reach: number;
  /** A solution of more than this is not looked for. */
  readonly most?: number;
}

/** Where the least is taken, and the least itself. */
export interface Solution {
  readonly u: Float64Array;
  readonly value: number;
}

/** Rounds after which a program is held to have no solution; those of fair lines take 5 to 15. */
const mostRounds = 40;
/** How far a bound may be overstepped, and how far the value may be from the least, both small against a micrometre. */
const feasible = 2e-8;
const gap = 1e-8;

/** The least slack, and slack times multiplier, that the first round starts with: of the size that a fair line's have (mm). */
const startSlack = 1e-4;
const startGap = 0.1;

/**
 * Solves a convex quadratic program by Mehrotra's predictor and corrector (SIAM Journal on Optimization 2, 1992; for quadratic
 * programs as in Nocedal and Wright, *Numerical Optimization*, 2006, algorithm 16.4; both from memory). Undefined where no u keeps
 * all bounds, or none of a value within `most`.
 */
export function solveProgram(program: QuadraticProgram): Solution | undefined {
  const { bounds, most = Infinity } = program;
  const n = program.linear.length;
  const m = bounds.length;
  const u = new Float64Array(n);
  const y = Float64Array.from(bounds, (bound) => Math.max(-bound, startSlack));
  const z = y.map((slack) => startGap / slack);
  const work = new Newton(program);
  for (let round = 0; round < mostRounds; round++) {
    const { overstep, mu, hopeless } = work.look(u, y, z);
    if (hopeless) return undefined;
    if (overstep < feasible && mu < gap) {
      const value = valueAt(program, u);
      return value > most ? undefined : { u, value };
    }
    // Predictor: straight for the solution; then as much back toward the middle as that step fell short.
    work.step(y, z, 0, false);
    const [ap, ad] = work.reach(y, z, 1);
    const { du, dy, dz } = work;
    let ahead = 0;
    for (let k = 0; k < m; k++) ahead += (y[k]! + ap * dy[k]!) * (z[k]! + ad * dz[k]!);
    const share = m > 0 ? ahead / m / mu : 0;
    work.step(y, z, share * share * share * mu, true);
    const [bp, bd] = work.reach(y, z, 0.995);
    const both = Math.min(bp, bd);
    for (let i = 0; i < n; i++) u[i]! += both * du[i]!;
    for (let k = 0; k < m; k++) {
      y[k]! += both * dy[k]!;
      z[k]! += both * dz[k]!;
    }
  }
  return undefined;
}

function valueAt({ quadratic, linear }: QuadraticProgram, u: Float64Array): number {
  const hu = new Float64Array(u.length);
  quadratic.times(u, hu);
  let sum = 0;
  for (let i = 0; i < u.length; i++) sum += u[i]! * (hu[i]! / 2 - linear[i]!);
  return sum;
}

/** One Newton step on the conditions of the optimum; rooms are kept from round to round. */
class Newton {
  readonly du: Float64Array;
  readonly dy: Float64Array;
  readonly dz: Float64Array;
  readonly #given: QuadraticProgram;
  readonly #system: BorderedBand;
  readonly #gradient: Float64Array;
  readonly #pull: Float64Array;
  readonly #miss: Float64Array;
  readonly #weights: Float64Array;
  readonly #push: Float64Array;

  constructor(given: QuadraticProgram) {
    const n = given.linear.length;
    const m = given.rows.count;
    this.#given = given;
    this.#pull = new Float64Array(n);
    this.#system = new BorderedBand(n);
    this.du = new Float64Array(n);
    this.#gradient = new Float64Array(n);
    this.dy = new Float64Array(m);
    this.dz = new Float64Array(m);
    this.#miss = new Float64Array(m);
    this.#weights = new Float64Array(m);
    this.#push = new Float64Array(m);
  }

  /** Measures where (u, y, z) stands and, unless that is the end, factors the system there. */
  look(u: Float64Array, y: Float64Array, z: Float64Array): { readonly overstep: number; readonly mu: number; readonly hopeless: boolean } {
    const { quadratic, linear, rows, bounds, reach, most = Infinity } = this.#given;
    const gradient = this.#gradient, pull = this.#pull, miss = this.#miss;
    pull.fill(0);
    rows.addTransposed(z, pull);
    quadratic.times(u, gradient);
    // Farkas: with multipliers z ≥ 0, zᵀ(A u − b) cannot be 0 or more where |Aᵀz|₁ · reach stays below bᵀz. And since the
    // Lagrange function is convex, no v within reach takes it below its value at u less |its gradient|₁ · |v − u|.
    let farthest = 0;
    let least = 0;
    for (let i = 0; i < linear.length; i++) {
      least += u[i]! * (gradient[i]! / 2 - linear[i]!);
      const slope = linear[i]! - gradient[i]! + pull[i]!;
      gradient[i] = slope;
      least -= Math.abs(slope) * (reach + Math.abs(u[i]!));
      farthest += Math.abs(pull[i]!) * reach;
    }
    rows.times(u, miss);
    let overstep = 0;
    let sum = 0;
    for (let k = 0; k < y.length; k++) {
      farthest -= z[k]! * bounds[k]!;
      const over = miss[k]! - bounds[k]!;
      least -= z[k]! * over;
      miss[k] = over - y[k]!;
      overstep = Math.max(overstep, Math.abs(miss[k]!));
      sum += y[k]! * z[k]!;
      this.#weights[k] = z[k]! / y[k]!;
    }
    const hopeless = farthest < 0 || least > most;
    const mu = y.length > 0 ? sum / y.length : 0;
    if (hopeless || (overstep < feasible && mu < gap)) return { overstep, mu, hopeless };
    this.#system.copy(quadratic);
    rows.addSquares(this.#weights, this.#system);
    this.#system.factor();
    return { overstep, mu, hopeless };
  }

  /** The step toward y z = target; `corrected` takes the last step's own product into account. */
  step(y: Float64Array, z: Float64Array, target: number, corrected: boolean): void {
    const { rows } = this.#given;
    const { du, dy, dz } = this;
    const push = this.#push, weights = this.#weights, miss = this.#miss;
    for (let k = 0; k < y.length; k++) {
      const product = target - (corrected ? dy[k]! * dz[k]! : 0);
      push[k] = product / y[k]! - z[k]! - weights[k]! * miss[k]!;
    }
    du.set(this.#gradient);
    rows.addTransposed(push, du);
    this.#system.solve(du);
    rows.times(du, dy);
    for (let k = 0; k < y.length; k++) {
      // push − (z/y) A du is the step of z; A du + miss that of y.
      dz[k] = push[k]! - weights[k]! * dy[k]!;
      dy[k] = dy[k]! + miss[k]!;
    }
  }

  /** How far slacks and multipliers may go along the step and stay positive, a share of it at most 1. */
  reach(y: Float64Array, z: Float64Array, margin: number): readonly [number, number] {
    const { dy, dz } = this;
    let [a, b] = [1, 1];
    for (let k = 0; k < y.length; k++) {
      if (dy[k]! < 0) a = Math.min(a, (-margin * y[k]!) / dy[k]!);
      if (dz[k]! < 0) b = Math.min(b, (-margin * z[k]!) / dz[k]!);
    }
    return [a, b];
  }
}
