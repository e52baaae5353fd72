import { finding, type Finding } from "#base/findings.ts";
import { usualParts, type PartChoices } from "./choices.ts";

/** The usual choices for a taped pattern, with the maker's own put in place of them: a lining in pieces needs a last, so it is cut in one where nothing is said. */
export const tapedPartsFrom = (own: Partial<PartChoices> = {}): PartChoices => ({ ...usualParts, lining: "one", ...own });

/** What is asked for and cannot be cut from a taped pattern, as far as no group of parts tells it by itself (lining in pieces, instep strap). */
export function tapeLacks({ cut, sideLining }: PartChoices): readonly Finding[] {
  return [
    ...(cut === "back-seam" ? [] : [finding("tape-cut", { cut })]),
    ...(sideLining ? [finding("extra-left-out", { what: "side lining", why: "a taped pattern does not show where the stiffener ends along the flank", instead: "cut it over the lasted lining, from the stiffener to the toe puff" })] : []),
  ];
}
