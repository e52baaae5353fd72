import { overUpperOf } from "#lasting/over-upper.ts";
import { fitStrips } from "#leather/fit-strips.ts";
import { usualLeather } from "#leather/leather-from.ts";
import type { UpperLayer } from "#leather/leather.ts";
import type { MakingInput } from "#making/input.ts";
import { makingOf } from "#making/making-of.ts";
import type { Making } from "#making/making.ts";
import type { MakingSaid } from "#making/said.ts";
import { shellChoices, shellRulesFor, shellSettingsFrom } from "#shell/rules.ts";
import type { ToplineEdge } from "#shell/settings.ts";
import { meanLength } from "#tape/taped-shell.ts";
import type { LastPair, Pair, TapedPair } from "./pair.ts";

/**
 * What making a pair takes. Not a stage of the pipeline: it takes milliseconds, and what the maker writes about prices is answered as she
 * types, without the pair being made anew.
 * @param said in place of what the pair's own job says
 */
export const makingOfPair = (pair: Pair, said: MakingSaid = pair.job.making): Making => makingOf({ ...commonOf(pair), ...(pair.from === "last" ? ofLast(pair) : ofTape(pair)), said });

/** How the topline is made; a taped pattern says it in its job alone. */
export const edgeOf = (pair: Pair): ToplineEdge => (pair.from === "last" ? pair.shellSettings.edge : pair.job.shell.edge ?? shellChoices.edge);

type OwnOf = Pick<MakingInput, "from" | "stiff" | "leathers" | "corrected" | "ends">;

function commonOf(pair: Pair): Omit<MakingInput, keyof OwnOf | "said"> {
  const { pieces, strips, stitching, parts, pieceSettings: settings, made } = pair;
  return { pieces, strips, stitching, parts, edge: edgeOf(pair), settings, ...(made && { made }) };
}

function ofLast({ shellSettings, leathers: { upper, lining }, corrected, lines, beneath }: LastPair): OwnOf {
  const { throatDepthMm, backHeightMm } = lines.settings;
  return {
    from: "last",
    stiff: shellSettings,
    leathers: { upper, lining },
    corrected: corrected !== undefined,
    ends: { throatDepthMm, backHeightMm, innerHeightMm: lines.lowestMedial.heightMm, outerHeightMm: lines.lowestLateral.heightMm, over: overUpperOf(beneath) },
  };
}

/** A taped pattern has no last to be lasted on in thought: its leathers are as they were said, its ends as they were taped. */
function ofTape({ job, tape }: TapedPair): OwnOf {
  const saidOf = (layer: UpperLayer) => fitStrips({ ...job.leather[layer], known: job.leather[layer]?.known ?? usualLeather[layer] }).leather;
  return {
    from: "tape",
    stiff: shellSettingsFrom(shellRulesFor({ measures: { lastLength: tape.length.mm } }, job.shell), job.shell),
    leathers: { upper: saidOf("upper"), lining: saidOf("lining") },
    corrected: false,
    ends: { throatDepthMm: meanLength(tape, "centre"), backHeightMm: meanLength(tape, "back") },
  };
}
