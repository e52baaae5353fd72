import type { LoftNumbers } from "./loft-numbers.ts";
import { widthsMet } from "./loft-plan.ts";
import type { LastMeasurements } from "./measured.ts";

/**
 * Four moves of the form, each paired with the girth it changes most (joint, waist, instep, heel); about 1 mm of height or standing
 * out a unit. The joint move raises the ridge over the joints; the waist move raises and widens the waist; the instep move widens
 * walls and bottom under the instep; the heel move raises the cone, widens the heel and narrows the walls before it.
 */
export type Moves = readonly number[];

/** How far each move may go before the form looks like no last, for a stick length of 253 mm: our own limits, seen on renderings. */
const low: Moves = [-12, -10, -13, -9];
const high: Moves = [14, 10, 12, 10];
export const still: Moves = [0, 0, 0, 0];
export const limits = (plan: LoftNumbers, k: number): readonly [number, number] => [low[k]! * plan.backScale, high[k]! * plan.backScale];

/** The form after the moves, its widths met again. */
export function moved(plan: LoftNumbers, m: LastMeasurements, moves: Moves): LoftNumbers {
  const [joint, waist, instep, heel] = [moves[0]!, moves[1]!, moves[2]!, moves[3]!];
  const now = {
    ...plan,
    rise: risen(plan, joint, waist, heel),
    fullnessMm: [0.7 * waist, 0.55 * instep - 0.3 * heel, heel] as const,
    shankMm: 0.4 * instep,
  };
  return widthsMet(now, m);
}

/** Heights of the ridge after moves at joints, waist and cone. */
export function risen(plan: LoftNumbers, joint: number, waist: number, heel: number): LoftNumbers["rise"] {
  const joints = plan.rise[0] + joint / 47;
  const cone = plan.rise[2] + heel / 83;
  const between = plan.rise[1] + (joints - plan.rise[0] + cone - plan.rise[2]) / 2;
  return [joints, between + waist / 122, cone];
}
