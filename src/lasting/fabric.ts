import { rotated, sumOf } from "#leather/combined.ts";
import { FirmPleats } from "#leather/firm-pleats.ts";
import { gathering } from "#leather/gathering.ts";
import type { Law } from "#leather/law.ts";
import type { Leather } from "#leather/leather.ts";
import { ToeLaw } from "#leather/toe-law.ts";
import type { ToplineEdge } from "#shell/settings.ts";
import type { LastingChoices } from "./settings.ts";
import type { Fabric } from "./upper.ts";

/** Green's strain down to which leather can be pushed together without pleats (from memory: 3 to 5 %). */
export const gatherLimit = -0.04;

/** Leather strip round a bound or a wrapped edge: width that lies along the edge, and thickness, mm (as the pieces are cut). */
const bindings: Partial<Record<ToplineEdge, number>> = { bound: 14, wrapped: 19 };
const bindingThickMm = 0.6;

/**
 * Upper, lining and what holds the topline as one membrane that lies on the last.
 * - The two layers are stretched alike, each in its own direction, and gather together; what lies in pleats is pushed on a little harder the
 *   more it is pushed, so that pleats spread out.
 * - Bending: B = E t³/12 for each with E = along/t, added up, as of two layers that slide on one another.
 * - The topline: a taped edge has its tape. A bound or wrapped one has its strip of leather, taken as the upper's along its tight way
 *   without the soft beginning, which is drawn out when the strip is sewn on. Folded, raw and bagged edges have nothing.
 * @param lining left out for an unlined upper
 * @throws Refusal `leather-law-impossible`
 */
export function fabricOf(upper: Leather, lining: Leather | undefined, settings: LastingChoices, edge: ToplineEdge): Fabric {
  const layers = [turned(upper, settings.upperTurnDeg), ...(lining ? [turned(lining, settings.liningTurnDeg)] : [])];
  return {
    law: new FirmPleats(gathering(sumOf(layers), gatherLimit), gatherLimit),
    bend: bending(upper) + (lining ? bending(lining) : 0),
    tapeN: edge === "taped" ? settings.tapeN : ((bindings[edge] ?? 0) * bindingThickMm * upper.numbers.along) / upper.thicknessMm,
    gatherLimit,
    grainLimit: upper.grainLimit,
    breakLimit: upper.breakLimit,
  };
}

const bending = ({ numbers, thicknessMm }: Leather): number => (numbers.along * thicknessMm * thicknessMm) / 12;

function turned({ numbers }: Leather, degrees: number): Law {
  const angle = (degrees * Math.PI) / 180;
  return rotated(new ToeLaw(numbers), Math.cos(angle), Math.sin(angle));
}
