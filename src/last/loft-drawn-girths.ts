import { finding } from "#base/findings.ts";
import { Refusal } from "#base/refusal.ts";
import { drawnMet, type Drawing } from "./loft-drawn.ts";
import { askedGirths, corrected, girthNames, slopesAt, type Girths, type GirthsOf } from "./loft-girths.ts";
import { risen, type Moves } from "./loft-moves.ts";
import type { LoftNumbers } from "./loft-numbers.ts";
import { widthsMet } from "./loft-plan.ts";
import type { LastMeasurements } from "./measured.ts";
import { solveSmall } from "./small-system.ts";

/** Moves that leave both silhouettes as they are drawn: squareness at joints, waist, heel and cone, and the bottom within the waist. */
const inside = 5;
/** Moves of the ridge (joints, waist, cone) that are free where no side is drawn; then of the walls (waist, instep, heel) without a bottom. */
const ofRidge = [5, 6, 7];
const ofWalls = [8, 9, 10];
/** What the form may stay off the lines: a tenth of a millimetre a unit, so that it is spent last. */
const ofLines = { ridge: [11, 12], plan: [13, 14] } as const;
const count = 15;

/** How far each may go, for a stick length of 253 mm: our own limits, seen on renderings. */
const low: Moves = [-24, -26, -12, -18, -14, -14, -12, -12, -10, -12, -4, -6, -6, -6, -6];
const high: Moves = [36, 28, 12, 20, 14, 16, 12, 12, 14, 16, 12, 6, 6, 6, 6];

/** Rounds in which the form comes back to the outlines after a move. */
const rounds = 2;
/** Nearer than this, mm, is near enough on the rough mesh. */
const near = 0.05;
/** Farther than this, mm, a girth does not go with the outlines: the half millimetre promised, less what the rough mesh errs. */
const missedDrawn = 0.45;

/**
 * Meets four girths where outlines are drawn, by more moves than there are girths: of all steps that would meet them the shortest is
 * taken, so that the form changes a little everywhere and no place gives alone. Slopes as in {@link import("./loft-girths.ts").GirthFit}.
 */
export class DrawnGirthFit {
  readonly #plan: LoftNumbers;
  readonly #measures: LastMeasurements;
  readonly #drawing: Drawing;
  readonly #asked: Girths;
  readonly #active: readonly number[];
  #moves: Moves = new Array<number>(count).fill(0);
  /** Rows: girths; columns: active moves. */
  #slopes: readonly Moves[] = [];

  /** `plan` follows the outlines of `drawing`. */
  constructor(plan: LoftNumbers, measures: LastMeasurements, drawing: Drawing) {
    this.#plan = plan;
    this.#measures = measures;
    this.#drawing = drawing;
    this.#asked = askedGirths(measures);
    const free = [...(drawing.profile ? ofLines.ridge : ofRidge), ...(drawing.plan ? ofLines.plan : ofWalls)];
    this.#active = [...Array.from({ length: inside }, (_, k) => k), ...free];
  }

  get numbers(): LoftNumbers {
    return this.#movedBy(this.#moves);
  }

  /**
   * Finds the moves on a quick measuring.
   * @throws Refusal that names the girth that does not go with the outlines
   */
  fit(girthsOf: GirthsOf): void {
    const at = (moves: Moves): Girths => girthsOf(this.#movedBy(moves));
    const atActive = (some: Moves): Girths => at(this.#whole(some));
    let girths = at(this.#moves);
    for (let round = 0; round < 12 && farthest(this.#asked, girths) > near; round++) {
      if (round % 6 === 0) this.#slopes = slopesAt(atActive, this.#some(this.#moves), girths);
      const next = this.#step(girths);
      const [from, to] = [this.#some(this.#moves), this.#some(next)];
      if (Math.max(...to.map((v, i) => Math.abs(v - from[i]!))) < near / 4) break;
      const after = at(next);
      this.#slopes = corrected(this.#slopes, from, to, girths, after);
      this.#moves = next;
      girths = after;
    }
    if (farthest(this.#asked, girths) > missedDrawn) this.#refuse(girths);
  }

  /** One step more, after a finer measuring of {@link numbers}. */
  better(girths: Girths): void {
    if (this.#slopes.length > 0) this.#moves = this.#step(girths);
  }

  #some(moves: Moves): Moves {
    return this.#active.map((i) => moves[i]!);
  }

  #whole(some: Moves): Moves {
    const out = new Array<number>(count).fill(0);
    this.#active.forEach((i, k) => (out[i] = some[k]!));
    return out;
  }

  /**
   * The shortest step that meets the girths by the slopes J: Jᵀ(JJᵀ + ε)⁻¹ times what is missed, at most 8 a move. What would
   * pass its limit is held there and the rest is met by the others.
   */
  #step(girths: Girths): Moves {
    const now = this.#some(this.#moves);
    const next = [...now];
    const held = new Set<number>();
    for (;;) {
      const free = now.map((_, k) => k).filter((k) => !held.has(k));
      const right = girths.map((g, r) => this.#asked[r]! - g - [...held].reduce((sum, k) => sum + this.#slopes[r]![k]! * (next[k]! - now[k]!), 0));
      const square = this.#slopes.map((a, r) => this.#slopes.map((b, c) => free.reduce((sum, k) => sum + a[k]! * b[k]!, r === c ? 1e-3 : 0)));
      const pull = solveSmall(square, right);
      const step = free.map((k) => pull.reduce((sum, v, r) => sum + v * this.#slopes[r]![k]!, 0));
      const longest = Math.max(8, ...step.map(Math.abs)) / 8;
      const beyond = free.filter((k, i) => {
        const wanted = now[k]! + step[i]! / longest;
        const scale = this.#plan.backScale;
        next[k] = Math.max(low[this.#active[k]!]! * scale, Math.min(high[this.#active[k]!]! * scale, wanted));
        return next[k] !== wanted;
      });
      if (beyond.length === 0) return this.#whole(next);
      held.add(beyond[0]!);
    }
  }

  #movedBy(moves: Moves): LoftNumbers {
    const [joint, waist, heel, cone, shank] = [moves[0]!, moves[1]!, moves[2]!, moves[3]!, moves[4]!];
    const now: LoftNumbers = {
      ...this.#plan,
      rise: risen(this.#plan, moves[5]!, moves[6]!, moves[7]!),
      fullnessMm: [0.7 * moves[8]!, 0.55 * moves[9]! - 0.3 * moves[10]!, moves[10]!],
      squareness: [0.03 * joint, 0.04 * waist, 0.05 * heel, 0.06 * cone],
      shankMm: (this.#drawing.plan ? 0.3 : 0.5) * shank,
    };
    const ease = [0.1 * moves[11]!, 0.1 * moves[12]!, 0.1 * moves[13]!, 0.1 * moves[14]!] as const;
    const drawn = widthsMet(drawnMet(now, this.#measures, { ...this.#drawing, ease }, rounds), this.#measures);
    return this.#drawing.plan ? drawn : widthsMet(drawn, this.#measures);
  }

  #refuse(girths: Girths): never {
    const off = girths.map((g, i) => Math.abs(g - this.#asked[i]!));
    const k = off.indexOf(Math.max(...off));
    throw new Refusal(finding("girth-against-outlines", { measure: girthNames[k]!, askedMm: this.#asked[k]!, nearestMm: girths[k]!, outlines: drawnWords(this.#drawing) }));
  }
}

const farthest = (asked: Girths, girths: Girths): number => Math.max(...girths.map((g, i) => Math.abs(g - asked[i]!)));

export const drawnWords = ({ plan, profile }: Drawing): string => (plan && profile ? "both drawn outlines" : plan ? "the drawn outline of the bottom" : "the outline drawn from the side");
