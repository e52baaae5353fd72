import { finding, type Finding } from "#base/findings.ts";
import { updatedBy, type Learned } from "#lasting/log-update.ts";
import { fitStrips } from "#leather/fit-strips.ts";
import { leatherFrom, usualLeather } from "#leather/leather-from.ts";
import { whereIn } from "#leather/strip-check.ts";
import { leatherThickness, upperLayers, type Leather, type UpperLayer } from "#leather/leather.ts";
import type { PieceSettings } from "#pieces/settings.ts";
import type { Job } from "./job.ts";

/** The leathers that a pair is reckoned with. */
export interface PairLeathers {
  /** As thick as the pieces are cut; the upper's as the shoes in the log have taught. */
  readonly upper: Leather;
  readonly lining: Leather;
  /** What the log taught about the upper's. */
  readonly learned: Learned;
  readonly findings: readonly Finding[];
}

/** From what the maker said of her leathers, and what was measured on shoes made of them on this last. */
export function leathersOf({ leather, log }: Pick<Job, "leather" | "log">, { upperThicknessMm, liningThicknessMm }: Pick<PieceSettings, "upperThicknessMm" | "liningThicknessMm">, last: string): PairLeathers {
  const thicknessMm = { upper: upperThicknessMm, lining: liningThicknessMm }, { least } = leatherThickness;
  const taken = (layer: UpperLayer): Leather => leatherFrom(leather[layer], layer, Math.max(least, thicknessMm[layer]));
  const learned = updatedBy(taken("upper"), log, last);
  const thin = upperLayers.filter((layer) => thicknessMm[layer] < least).map((layer) => finding("leather-thin", { layer, thicknessMm: thicknessMm[layer], leastMm: least }));
  return { upper: learned.leather, lining: taken("lining"), learned, findings: [...thin, ...upperLayers.flatMap((layer) => saidOf(leather, layer))] };
}

/** What there is to say about strips; nothing where none were read. */
function saidOf(leather: Job["leather"], layer: UpperLayer): readonly Finding[] {
  const said = leather[layer];
  return said?.strips?.length ? fitStrips({ ...said, known: said.known ?? usualLeather[layer] }, { where: whereIn(said.strips, layer) }).findings : [];
}
