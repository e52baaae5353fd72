import { finding } from "#base/findings.ts";
import { Refusal } from "#base/refusal.ts";
import { limits, moved, still, type Moves } from "./loft-moves.ts";
import type { LoftNumbers } from "./loft-numbers.ts";
import type { LastMeasurements } from "./measured.ts";
import { solveSmall } from "./small-system.ts";

/** Joint, waist, instep and heel girth, mm. */
export type Girths = readonly [number, number, number, number];

/** Girths of a form, by the shared measuring. */
export type GirthsOf = (numbers: LoftNumbers) => Girths;

export const askedGirths = (m: LastMeasurements): Girths => [m.jointGirthMm, m.waistGirthMm, m.instepGirthMm, m.heelGirthMm];

export const girthNames = ["jointGirth", "waistGirth", "instepGirth", "heelGirth"] as const;
/** The girths that bear on each; the joint girth is bound by the ball width instead. */
const beside: readonly (readonly [number, ...number[]])[] = [[0], [0, 2], [1, 3], [2]];

/** Nearer than this, mm, the rough mesh is as good as its own error. */
const near = 0.02;
/** Farther than this a girth counts as not to be had. */
const missed = 0.3;

/**
 * Meets four girths by four moves of a form: Newton with slopes by differences, corrected by each step. Moves are held within
 * their limits; a girth whose move is held is left over to the end, and if it is still missed then the measures contradict.
 */
export class GirthFit {
  readonly #plan: LoftNumbers;
  readonly #measures: LastMeasurements;
  readonly #asked: Girths;
  #moves: Moves = still;
  #slopes: readonly Moves[] = [];

  constructor(plan: LoftNumbers, measures: LastMeasurements) {
    this.#plan = plan;
    this.#measures = measures;
    this.#asked = askedGirths(measures);
  }

  get numbers(): LoftNumbers {
    return this.#movedBy(this.#moves);
  }

  #movedBy(moves: Moves): LoftNumbers {
    return moved(this.#plan, this.#measures, moves);
  }

  /**
   * Finds the moves on a quick measuring.
   * @throws Refusal that names the two measures that contradict and the range that would fit
   */
  fit(girthsOf: GirthsOf): void {
    const girths = this.#approach(girthsOf, []);
    const off = girths.map((g, i) => Math.abs(g - this.#asked[i]!));
    const k = off.indexOf(Math.max(...off));
    if (off[k]! > missed) this.#refuse(girthsOf, k);
  }

  /** One step more, after a finer measuring of {@link numbers}. */
  better(girths: Girths): void {
    this.#moves = this.#step(girths, []);
  }

  /** Steps until the girths not in `fixed` are met or do not come nearer; returns what is reached. */
  #approach(girthsOf: GirthsOf, fixed: readonly number[]): Girths {
    const at = (moves: Moves): Girths => girthsOf(this.#movedBy(moves));
    let girths = at(this.#moves);
    for (let round = 0; round < 12; round++) {
      if (round % 4 === 0) this.#slopes = slopesAt(at, this.#moves, girths);
      const next = this.#step(girths, fixed);
      const gone = Math.max(...next.map((v, i) => Math.abs(v - this.#moves[i]!)));
      if (gone < near / 4) break;
      const after = at(next);
      this.#slopes = corrected(this.#slopes, this.#moves, next, girths, after);
      this.#moves = next;
      girths = after;
      if (Math.max(...girths.map((g, i) => (fixed.includes(i) ? 0 : Math.abs(g - this.#asked[i]!)))) < near) break;
    }
    return girths;
  }

  /** A Newton step of at most 6 mm a move. A move that meets its limit stays there and its girth is left; the others are solved anew. */
  #step(girths: Girths, fixed: readonly number[]): Moves {
    const held = new Set(fixed);
    const next = [...this.#moves];
    for (;;) {
      const free = [0, 1, 2, 3].filter((i) => !held.has(i));
      const gone = next.map((v, i) => v - this.#moves[i]!);
      const right = free.map((r) => this.#asked[r]! - girths[r]! - [...held].reduce((sum, c) => sum + this.#slopes[r]![c]! * gone[c]!, 0));
      const step = solveSmall(free.map((r) => free.map((c) => this.#slopes[r]![c]!)), right);
      const longest = Math.max(6, ...step.map(Math.abs)) / 6;
      const beyond = free.filter((i, k) => {
        const [low, high] = limits(this.#plan, i);
        const wanted = this.#moves[i]! + step[k]! / longest;
        next[i] = Math.max(low, Math.min(high, wanted));
        return next[i] !== wanted;
      });
      if (beyond.length === 0) return next;
      held.add(beyond[0]!);
    }
  }

  #refuse(girthsOf: GirthsOf, k: number): never {
    const usual = girthsOf(this.#movedBy(still));
    const above = (i: number): number => this.#asked[i]! - usual[i]!;
    // Of the girths beside it the one that departs most the other way.
    const [first, ...others] = beside[k]!;
    const j = others.reduce((best, i) => (Math.abs(above(k) - above(i)) > Math.abs(above(k) - above(best)) ? i : best), first);
    const measure = girthNames[k]!;
    const against = k === 0 ? "ballWidth" : girthNames[j]!;
    const [fromMm, toMm] = limits(this.#plan, k).map((end) => this.#reach(girthsOf, k, end)).sort((a, b) => a - b) as [number, number];
    const askedMm = this.#asked[k]!;
    throw new Refusal(
      finding("measures-contradict", {
        measure,
        askedMm,
        against,
        againstMm: this.#measures[`${against}Mm`],
        fromMm: Math.ceil(fromMm),
        toMm: Math.floor(toMm),
      }),
    );
  }

  /** Girth k with its move as near to a limit as it can go while the other girths are still met. */
  #reach(girthsOf: GirthsOf, k: number, end: number): number {
    const at = (move: number): Girths => {
      this.#moves = still.map((v, i) => (i === k ? move : v));
      return this.#approach(girthsOf, [k]);
    };
    const met = (girths: Girths): boolean => girths.every((g, i) => i === k || Math.abs(g - this.#asked[i]!) < missed);
    const farthest = at(end);
    if (met(farthest)) return farthest[k]!;
    let best = at(0);
    if (!met(best)) return farthest[k]!;
    for (let [can, far, halving] = [0, end, 0]; halving < 6; halving++) {
      const middle = (can + far) / 2;
      const girths = at(middle);
      if (met(girths)) [can, best] = [middle, girths];
      else far = middle;
    }
    return best[k]!;
  }
}

/** Rows: girths; columns: moves. */
export function slopesAt(at: (moves: Moves) => Girths, moves: Moves, girths: Girths): Moves[] {
  const columns = moves.map((_, k) => at(moves.map((v, i) => (i === k ? v + 1 : v))).map((g, row) => g - girths[row]!));
  return girths.map((_, row) => columns.map((c) => c[row]!));
}

/** The slopes after a step, corrected by what it really did: Broyden's rank-one update (Mathematics of Computation 19, 1965). */
export function corrected(slopes: readonly Moves[], from: Moves, to: Moves, before: Girths, after: Girths): Moves[] {
  const step = to.map((v, i) => v - from[i]!);
  const long = step.reduce((sum, v) => sum + v * v, 0);
  return slopes.map((row, r) => {
    const surprise = after[r]! - before[r]! - row.reduce((sum, v, i) => sum + v * step[i]!, 0);
    return row.map((v, i) => v + (surprise * step[i]!) / long);
  });
}
