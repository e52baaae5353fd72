import { unwatched, type Watch } from "#base/watch.ts";
import type { Card } from "./card.ts";
import { Descent, type WrapStep } from "./descent.ts";
import type { Ground } from "./ground.ts";
import { ofVertices, pointsAt } from "./sheet-points.ts";
import { sheetOf, type SheetInput } from "./sheet.ts";

export interface WrapOptions {
  readonly card: Card;
  /** At rest when a whole step moves no point by more than this, mm. */
  readonly toleranceMm?: number;
  readonly mostSteps?: number;
  readonly watch?: Watch;
}

/** A sheet at rest on its ground. */
export interface Wrapped {
  /** x y z of each vertex, mm; taped vertices lie in one place. */
  readonly positions: Float64Array;
  /** Height of each vertex over the ground, mm; a trifle below 0 where it is pressed in. */
  readonly height: Float64Array;
  /** Where each vertex touches or would touch: the nearest point of the ground, x y z mm. */
  readonly foot: Float64Array;
  /** Larger and smaller principal stretch of each triangle, flat → space. */
  readonly most: Float64Array;
  readonly least: Float64Array;
  readonly steps: readonly WrapStep[];
  /** Whether it came to rest within the steps allowed. */
  readonly settled: boolean;
}

const TOLERANCE_MM = 0.02;
const MOST_STEPS = 300;
/** Steps that a sheet of an upper takes, for telling how far it has come. */
const USUAL_STEPS = 50;

/**
 * Lays a sheet on a rigid surface from where its vertices lie at first (x y z mm each) and lets it come to rest: least stretch, bending
 * and distance, hardly inside the ground. Method, sources and limits: docs/method/check.md.
 */
export function wrap(input: SheetInput, start: Float64Array, ground: Ground, { card, toleranceMm = TOLERANCE_MM, mostSteps = MOST_STEPS, watch = unwatched }: WrapOptions): Wrapped {
  const sheet = sheetOf(input);
  const descent = new Descent(sheet, pointsAt(sheet, start), ground, card);
  const steps: WrapStep[] = [];
  let settled = false;
  while (!settled && steps.length < mostSteps && steps.at(-1)?.part !== 0) {
    const step = descent.step();
    steps.push(step);
    watch("wrap", Math.min(0.95, steps.length / USUAL_STEPS));
    // A step cut short says nothing about the way that is left.
    settled = step.moveMm < toleranceMm * step.part;
  }
  const { height, foot } = descent.heights();
  return {
    positions: ofVertices(sheet, descent.x, 3),
    height: ofVertices(sheet, height, 1),
    foot: ofVertices(sheet, foot, 3),
    ...descent.stretches(),
    steps,
    settled,
  };
}
