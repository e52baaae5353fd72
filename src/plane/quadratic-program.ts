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
 * all bounds.
 */
export function solveProgram(program: QuadraticProgram): Solution | undefined {
  const { bounds } = program;
  const n = program.linear.length;
  const m = bounds.length;
  const u = new Float64Array(n);
  const y = Float64Array.from(bounds, (bound) => Math.max(-bound, startSlack));
  const z = y.map((slack) => startGap / slack);
  const work = new Newton(program);
  for (let round = 0; round < mostRounds; round++) {
    const { overstep, mu, hopeless } = work.look(u, y, z);
    if (overstep < feasible && mu < gap) return { u, value: valueAt(program, u) };
    if (hopeless) return undefined;
    // Predictor: straight for the solution; then as much back toward the middle as that step fell short.
    work.step(y, z, 0, false);
    const [ap, ad] = work.reach(y, z, 1);
    let ahead = 0;
    for (let k = 0; k < m; k++) ahead += (y[k]! + ap * work.dy[k]!) * (z[k]! + ad * work.dz[k]!);
    const share = m > 0 ? ahead / m / mu : 0;
    work.step(y, z, share * share * share * mu, true);
    const [bp, bd] = work.reach(y, z, 0.995);
    const both = Math.min(bp, bd);
    for (let i = 0; i < n; i++) u[i]! += both * work.du[i]!;
    for (let k = 0; k < m; k++) {
      y[k]! += both * work.dy[k]!;
      z[k]! += both * work.dz[k]!;
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

  /** Measures where (u, y, z) stands and factors the system there. */
  look(u: Float64Array, y: Float64Array, z: Float64Array): { readonly overstep: number; readonly mu: number; readonly hopeless: boolean } {
    const { quadratic, linear, rows, bounds, reach } = this.#given;
    this.#pull.fill(0);
    rows.addTransposed(z, this.#pull);
    quadratic.times(u, this.#gradient);
    // Farkas: with multipliers z ≥ 0, zᵀ(A u − b) cannot be 0 or more where |Aᵀz|₁ · reach stays below bᵀz.
    let most = 0;
    for (let i = 0; i < linear.length; i++) {
      this.#gradient[i] = linear[i]! - this.#gradient[i]! + this.#pull[i]!;
      most += Math.abs(this.#pull[i]!) * reach;
    }
    for (let k = 0; k < z.length; k++) most -= z[k]! * bounds[k]!;
    rows.times(u, this.#miss);
    let overstep = 0;
    let sum = 0;
    for (let k = 0; k < y.length; k++) {
      this.#miss[k] = this.#miss[k]! - bounds[k]! - y[k]!;
      overstep = Math.max(overstep, Math.abs(this.#miss[k]!));
      sum += y[k]! * z[k]!;
      this.#weights[k] = z[k]! / y[k]!;
    }
    this.#system.copy(quadratic);
    rows.addSquares(this.#weights, this.#system);
    this.#system.factor();
    return { overstep, mu: y.length > 0 ? sum / y.length : 0, hopeless: most < 0 };
  }

  /** The step toward y z = target; `corrected` takes the last step's own product into account. */
  step(y: Float64Array, z: Float64Array, target: number, corrected: boolean): void {
    const { rows } = this.#given;
    for (let k = 0; k < y.length; k++) {
      const product = target - (corrected ? this.dy[k]! * this.dz[k]! : 0);
      this.#push[k] = product / y[k]! - z[k]! - this.#weights[k]! * this.#miss[k]!;
    }
    this.du.set(this.#gradient);
    rows.addTransposed(this.#push, this.du);
    this.#system.solve(this.du);
    rows.times(this.du, this.dy);
    for (let k = 0; k < y.length; k++) {
      // push − (z/y) A du is the step of z; A du + miss that of y.
      this.dz[k] = this.#push[k]! - this.#weights[k]! * this.dy[k]!;
      this.dy[k] = this.dy[k]! + this.#miss[k]!;
    }
  }

  /** How far slacks and multipliers may go along the step and stay positive, a share of it at most 1. */
  reach(y: Float64Array, z: Float64Array, margin: number): readonly [number, number] {
    let [a, b] = [1, 1];
    for (let k = 0; k < y.length; k++) {
      if (this.dy[k]! < 0) a = Math.min(a, (-margin * y[k]!) / this.dy[k]!);
      if (this.dz[k]! < 0) b = Math.min(b, (-margin * z[k]!) / this.dz[k]!);
    }
    return [a, b];
  }
}
