import type { Finding } from "#base/findings.ts";
import type { MakingInput } from "./input.ts";
import type { Bond, Need } from "./need.ts";
import { leatherNeeds } from "./needs/leathers.ts";
import { readSkins } from "./skins.ts";
import type { ThreadNeed } from "./thread-need.ts";

export interface Needed {
  readonly needs: readonly Need[];
  readonly bonds: readonly Bond[];
  readonly findings: readonly Finding[];
}

/**
 * What one pair takes, in the order in which a maker shops: leathers, stiffening, bottom, tapes, thread, nails, cement, sundries. Net amounts
 * are exact to the pieces. What there is no piece of is not on the list. Formulas and sources: docs/method/making.md.
 */
export function needsOf(input: MakingInput, _thread: ThreadNeed): Needed {
  const findings: Finding[] = [];
  const skins = readSkins(input.said, findings);
  return { needs: leatherNeeds(input, skins, findings), bonds: [], findings };
}
