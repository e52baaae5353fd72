import type { Finding } from "#base/findings.ts";
import type { MakingInput } from "../input.ts";
import type { Bond, Need } from "../need.ts";
import { bottomBonds } from "./bonds-bottom.ts";
import { upperBonds } from "./bonds-upper.ts";
import { bottomNeeds } from "./bottom.ts";
import { readCement } from "./cement-choice.ts";
import { glueNeeds } from "./glue.ts";
import { leatherNeeds } from "./leathers.ts";
import { nailNeeds } from "./nails.ts";
import { sewingNeeds } from "./sewing.ts";
import { stiffeningNeeds } from "./stiffening.ts";
import { sundryNeeds } from "./sundries.ts";
import { tapeNeeds } from "./tapes.ts";
import { readSkins } from "./skins.ts";
import type { ThreadNeed } from "../thread/thread-need.ts";

export interface Needed {
  readonly needs: readonly Need[];
  readonly bonds: readonly Bond[];
  readonly findings: readonly Finding[];
}

/**
 * What one pair takes, in the order in which a maker shops: leathers, stiffening, tapes, bottom, thread, cement, nails, sundries. Net amounts
 * are exact to the pieces; what there is no piece of is not on the list. Formulas and sources: docs/method/making.md.
 */
export function needsOf(input: MakingInput, thread: ThreadNeed): Needed {
  const findings: Finding[] = [];
  const skins = readSkins(input.said, findings);
  readCement(input.said, findings);
  const bonds = [...upperBonds(input), ...bottomBonds(input)];
  const needs = [
    ...leatherNeeds(input, skins, findings),
    ...stiffeningNeeds(input, skins, findings),
    ...tapeNeeds(input),
    ...bottomNeeds(input),
    ...sewingNeeds(thread),
    ...glueNeeds(bonds),
    ...nailNeeds(input, findings),
    ...sundryNeeds(input),
  ];
  return { needs, bonds, findings };
}
