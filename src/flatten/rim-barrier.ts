import { adjacencyOf } from "#solve/adjacency.ts";
import { BlockPattern } from "#solve/block-pattern.ts";
import { distanceInSpace } from "./distance.ts";
import { NewtonSystem } from "./newton-system.ts";
import { contactsOf, nearPlaces, rimCrosses, type Contact, type NearPlaces } from "./rim-contacts.ts";

/** Distance at which parts of the rim begin to push each other away, mm; no more than this share of the piece's breadth. */
const CLEAR_MM = 1;
const CLEAR_SHARE = 0.01;
/** Parts of the rim closer than so many clearances on the surface itself are neighbours. */
const NEIGHBOURS = 6;
/** Energy of the whole rim pressed to about a third of the clearance; small against what opening a piece by millimetres costs. */
const STRENGTH = 1e-3;

/**
 * Keeps the rim of a flat piece from crossing itself: Σ strength · share · (c − d)³ / (c² d) over all rim vertices closer than
 * the clearance c to an edge of the rim, share the vertex's part of the rim's length; infinite where the rim crosses itself.
 * Smooth where contact begins, and made of + − × ÷ √ alone (a barrier on distances as in Li and others 2020, "Incremental
 * potential contact", there with a logarithm).
 */
export class RimBarrier {
  readonly #rim: Uint32Array;
  readonly #near: NearPlaces;
  readonly #clearMm: number;
  readonly #weight: Float64Array;
  readonly #held: readonly number[];
  #system: NewtonSystem;
  #joined = new Set<number>();

  /** `system` is that of the piece without the barrier, `held` what is held in it; `area` in mm². */
  constructor(rim: Uint32Array, positions: Float64Array, area: number, system: NewtonSystem, held: readonly number[]) {
    const { pattern } = system;
    this.#rim = rim;
    this.#system = system;
    this.#held = held;
    this.#clearMm = Math.min(CLEAR_MM, CLEAR_SHARE * Math.sqrt(area));
    this.#near = nearPlaces(adjacencyOf(pattern.size, pattern.low, pattern.high), rim, positions, NEIGHBOURS * this.#clearMm);
    const count = rim.length;
    const lengths = Float64Array.from({ length: count }, (_, k) => distanceInSpace(positions, rim[k]!, rim[(k + 1) % count]!));
    const total = lengths.reduce((sum, l) => sum + l, 0);
    this.#weight = lengths.map((l, k) => (STRENGTH * (l + lengths[(k + count - 1) % count]!)) / (2 * total));
  }

  energy(uv: Float64Array): number {
    if (rimCrosses(this.#rim, uv)) return Infinity;
    const c = this.#clearMm;
    let sum = 0;
    for (const { distance: d, place } of contactsOf(this.#rim, this.#near, uv, c)) sum += (this.#weight[place]! * (c - d) ** 3) / (c * c * d);
    return sum;
  }

  /** The system for a step from uv, with room for whatever touches there. */
  systemAt(uv: Float64Array): NewtonSystem {
    const { size, low, high } = this.#system.pattern;
    const before = this.#joined.size;
    for (const { vertex, a, b } of contactsOf(this.#rim, this.#near, uv, this.#clearMm)) this.#joined.add(vertex * size + a).add(vertex * size + b);
    if (this.#joined.size === before) return this.#system;
    // The blocks there are keep their slots, as the triangles know them by these.
    const pattern = new BlockPattern(size, 2, low.length + 2 * this.#joined.size);
    for (let k = 0; k < low.length; k++) pattern.slot(low[k]!, high[k]!);
    for (const pair of this.#joined) pattern.slot(Math.floor(pair / size), pair % size);
    this.#system = new NewtonSystem(pattern);
    this.#system.hold(this.#held);
    return this.#system;
  }

  /** Adds gradient and the part of the Hessian that is never negative: the push's own change, not that of its direction. */
  addDerivativesInto(gradient: Float64Array, values: Float64Array, pattern: BlockPattern, uv: Float64Array): void {
    const c = this.#clearMm;
    for (const contact of contactsOf(this.#rim, this.#near, uv, c)) {
      const d = contact.distance;
      const weight = this.#weight[contact.place]!;
      addContactInto(gradient, values, pattern, contact, weight * (3 / c - c / (d * d) - (2 * d) / (c * c)), weight * ((2 * c) / (d * d * d) - 2 / (c * c)));
    }
  }
}

/** Adds `first` · ∇d to the gradient and `second` · ∇d ∇dᵀ to the Hessian. */
function addContactInto(gradient: Float64Array, values: Float64Array, pattern: BlockPattern, contact: Contact, first: number, second: number): void {
  const { vertex, a, b, along, nu, nv } = contact;
  const parts = [[vertex, 1], [a, along - 1], [b, -along]] as const;
  for (const [i, wi] of parts) {
    gradient[2 * i]! += first * wi * nu;
    gradient[2 * i + 1]! += first * wi * nv;
    for (const [j, wj] of parts) {
      if (j > i) continue; // the diagonal blocks, and every other block once
      const at = 4 * (i === j ? i : pattern.slot(i, j));
      const w = second * wi * wj;
      values[at]! += w * nu * nu;
      if (i !== j) values[at + 1]! += w * nu * nv;
      values[at + 2]! += w * nu * nv;
      values[at + 3]! += w * nv * nv;
    }
  }
}
