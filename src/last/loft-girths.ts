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
   * Finds the moves on a quick measuring. What that leaves over for its own roughness alone is left to {@link better}.
   * @throws Refusal that names the two measures that contradict and the range that would fit
   */
  fit(girthsOf: GirthsOf): void {
    const girths = this.#approach(girthsOf, []);
    if (this.#off(girths, []) > missed) this.#refuse(girthsOf, girths);
  }

  /** One step more, after a finer measuring of {@link numbers}. */
  better(girths: Girths): void {
    this.#moves = this.#step(girths, []);
  }

  /** Farthest of the girths not in `fixed` from what is asked, mm. */
  #off(girths: Girths, fixed: readonly number[]): number {
    return Math.max(...girths.map((g, i) => (fixed.includes(i) ? 0 : Math.abs(g - this.#asked[i]!))));
  }

  /**
   * Steps until the girths not in `fixed` are met or do not come nearer; returns what is reached. On a rough mesh a girth may leap by
   * some tenths between two moves: steps then go to and fro over the leap, and the nearest of them is taken.
   */
  #approach(girthsOf: GirthsOf, fixed: readonly number[]): Girths {
    const at = (moves: Moves): Girths => girthsOf(this.#movedBy(moves));
    let girths = at(this.#moves);
    let best = { moves: this.#moves, girths };
    for (let round = 0; round < 12 && this.#off(girths, fixed) >= near; round++) {
      if (round % 4 === 0) this.#slopes = slopesAt(at, this.#moves, girths);
      const next = this.#step(girths, fixed);
      const gone = Math.max(...next.map((v, i) => Math.abs(v - this.#moves[i]!)));
      if (gone < near / 4) break;
      const after = at(next);
      this.#slopes = corrected(this.#slopes, this.#moves, next, girths, after);
      this.#moves = next;
      girths = after;
      if (this.#off(girths, fixed) < this.#off(best.girths, fixed)) best = { moves: next, girths };
    }
    this.#moves = best.moves;
    return best.girths;
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

  /**
   * Names the girth that the others leave no room for, the farthest off first. Where each of them has room, the quick measuring was too
   * rough: the nearest form stands, for the finer one to judge.
   */
  #refuse(girthsOf: GirthsOf, reached: Girths): void {
    const [nearest, slopes] = [this.#moves, this.#slopes];
    const off = reached.map((g, i) => Math.abs(g - this.#asked[i]!));
    for (const k of [0, 1, 2, 3].filter((i) => off[i]! > missed).sort((a, b) => off[b]! - off[a]!)) {
      const room = this.#room(girthsOf, k);
      const askedMm = this.#asked[k]!;
      if (!room || (askedMm >= room[0] && askedMm <= room[1])) continue;
      const against = this.#against(girthsOf, k);
      throw new Refusal(finding("measures-contradict", { measure: girthNames[k]!, askedMm, against, againstMm: this.#measures[`${against}Mm`], fromMm: room[0], toMm: room[1] }));
    }
    [this.#moves, this.#slopes] = [nearest, slopes];
  }

  /** Of the measures beside girth k the one that departs most the other way. */
  #against(girthsOf: GirthsOf, k: number): "ballWidth" | (typeof girthNames)[number] {
    if (k === 0) return "ballWidth";
    const usual = girthsOf(this.#movedBy(still));
    const above = (i: number): number => this.#asked[i]! - usual[i]!;
    const [first, ...others] = beside[k]!;
    return girthNames[others.reduce((best, i) => (Math.abs(above(k) - above(i)) > Math.abs(above(k) - above(best)) ? i : best), first)]!;
  }

  /** From where to where girth k can go while the others are met, whole mm; undefined where they cannot be met at all. */
  #room(girthsOf: GirthsOf, k: number): readonly [number, number] | undefined {
    const at = (move: number): { readonly move: number; readonly girth: number; readonly met: boolean } => {
      this.#moves = still.map((v, i) => (i === k ? move : v));
      const girths = this.#approach(girthsOf, [k]);
      return { move, girth: girths[k]!, met: this.#off(girths, [k]) < missed };
    };
    const [low, high] = limits(this.#plan, k).map(at) as [ReturnType<typeof at>, ReturnType<typeof at>];
    let inner = low.met ? low : high;
    for (let i = 1; !inner.met && i < 4; i++) inner = at(low.move + (i / 4) * (high.move - low.move));
    if (!inner.met) return undefined;
    const reach = (end: typeof low): number => {
      if (end.met) return end.girth;
      let can = inner;
      for (let [far, halving] = [end.move, 0]; halving < 6; halving++) {
        const middle = at((can.move + far) / 2);
        if (middle.met) can = middle;
        else far = middle.move;
      }
      return can.girth;
    };
    const ends = [reach(low), reach(high)];
    const room = [Math.ceil(Math.min(...ends)), Math.floor(Math.max(...ends))] as const;
    return room[0] <= room[1] ? room : undefined;
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
