import { finding, type Finding } from "#base/findings.ts";
import { unwatched } from "#base/watch.ts";
import type { Leather } from "#leather/leather.ts";
import { bandOf, type Banding, type BandOptions, type Pattern } from "./band.ts";
import type { Banded } from "./lasted.ts";
import type { LastingCase } from "./lasting-case.ts";

/** Two uppers on one pattern: where the throat ends with each, mm. */
export interface Swapped {
  readonly from: Banded;
  readonly to: Banded;
  readonly finding: Finding;
}

/**
 * Another leather for the upper on the same pattern, the lining as it is. Both leathers are drawn with the same chance, so that what is
 * told apart is the leathers and not the luck. `known`: the band of the first one, where it was drawn already with these options.
 */
export function swapped(of: LastingCase, pattern: Pattern, upper: Leather, options: BandOptions & { readonly known?: Banding } = {}): Swapped {
  const { watch = unwatched, known } = options;
  const first = known ?? bandOf(of, pattern, { ...options, watch: (stage, fraction) => watch(stage, fraction / 2) });
  const second = bandOf({ ...of, upper }, pattern, { ...options, watch: (stage, fraction) => watch(stage, known ? fraction : (1 + fraction) / 2) });
  const byMm = second.centre.throatDepthMm - first.centre.throatDepthMm;
  const from = first.banded.throatDepthMm, { target, predicted, low, high } = second.banded.throatDepthMm;
  const to: Banded = { target, predicted: predicted + byMm, low: low + byMm, high: high + byMm };
  return { from, to, finding: finding("swapped", { from: of.upper.name, to: upper.name, fromMm: from.predicted, toMm: to.predicted, lowMm: to.low, highMm: to.high }) };
}
