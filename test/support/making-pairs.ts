import type { Job } from "#job/job.ts";
import { Pipeline } from "#job/pipeline.ts";
import { defaultJob } from "#job/default-job.ts";
import type { MakingInput } from "#making/input.ts";
import type { MakingSaid } from "#making/said.ts";
import type { PartChoices } from "#pieces/choices.ts";
import type { PieceSettings } from "#pieces/settings.ts";
import type { ShellSettings } from "#shell/settings.ts";
import { onLast } from "./on-last.ts";

export interface OwnChoices {
  readonly parts?: Partial<PartChoices>;
  readonly shell?: Partial<ShellSettings>;
  readonly pieces?: Partial<PieceSettings>;
  readonly said?: MakingSaid;
}

const kept = new Map<string, MakingInput>();
/** One for all pairs of a file: where only a choice of the pieces changes, the last and its shell stay as they are. */
const pipeline = new Pipeline();

/** What making asks of the example pair (invented), or of another job, with some choices changed. A pair is cut once for all tests of a file. */
export function makingInput({ said = {}, ...own }: OwnChoices = {}, job: Job = defaultJob()): MakingInput {
  const key = JSON.stringify([own, job]);
  const known = kept.get(key) ?? cut(own, job);
  kept.set(key, known);
  return { ...known, said };
}

function cut({ parts = {}, shell = {}, pieces = {} }: OwnChoices, job: Job): MakingInput {
  const pair = onLast(pipeline.run({ ...job, parts: { ...job.parts, ...parts }, shell: { ...job.shell, ...shell }, pieces: { ...job.pieces, ...pieces } }, new Map(), { triangles: 4000 }));
  const { upper, lining } = pair.leathers;
  const { settings } = pair.lines;
  return {
    from: "last", pieces: pair.pieces, strips: pair.strips, stitching: pair.stitching, parts: pair.parts, edge: pair.shellSettings.edge, settings: pair.pieceSettings,
    stiff: pair.shellSettings, ...(pair.made && { made: pair.made }), leathers: { upper, lining }, corrected: pair.corrected !== undefined,
    ends: { throatDepthMm: settings.throatDepthMm, backHeightMm: settings.backHeightMm }, said: {},
  };
}
