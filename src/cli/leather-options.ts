// What is said on the command line about leather and lasting.
import type { Command } from "commander";
import type { Finding } from "#base/findings.ts";
import type { Job } from "#job/job.ts";
import { knownLeathers, upperLayers, type KnownLeather, type LeatherSaid, type UpperLayer } from "#leather/leather.ts";
import { readStripCsv } from "#leather/strip-csv.ts";
import { readInput } from "./input.ts";
import { asText } from "./text.ts";
import { oneOf } from "./values.ts";

export interface LeatherOptions {
  readonly upperLeather?: KnownLeather;
  readonly upperStrips?: string;
  readonly liningLeather?: KnownLeather;
  readonly liningStrips?: string;
  readonly correct?: true;
  readonly toMarks?: true;
  readonly foretell?: true;
}

export function addLeatherOptions(command: Command): Command {
  for (const layer of upperLayers) {
    command
      .option(`--${layer}-leather <leather>`, `what the ${layer} is cut from, or is most like: ${knownLeathers.join(", ")}`, oneOf(`--${layer}-leather`, knownLeathers))
      .option(`--${layer}-strips <csv>`, `what you read on strips of the ${layer}'s leather, as for lastwise strip`);
  }
  return command
    .option("--correct", "cut the pieces from the pattern that is corrected for how the leather gives")
    .option("--to-marks", "corrected, and cut farther in or out until throat, back and sides end at their marks when it is pulled over; takes some tens of seconds")
    .option("--foretell", "pull the upper over the last draft by draft and tell where throat, back and sides end, with a band; takes some tens of seconds");
}

/** The job with what was said about leather and lasting put over it, and what is wrong with rows of strips. */
export function withLeatherOptions(job: Job, options: LeatherOptions): { readonly job: Job; readonly findings: readonly Finding[] } {
  const read = upperLayers.flatMap((layer) => {
    const path = options[`${layer}Strips`];
    return path === undefined ? [] : [{ layer, ...readStripCsv(asText(readInput(path))) }];
  });
  const said = (layer: UpperLayer): LeatherSaid | undefined => {
    const known = options[`${layer}Leather`], strips = read.find((one) => one.layer === layer)?.strips;
    if (known === undefined && strips === undefined) return job.leather[layer];
    // Strips belong to the leather they were cut from: another kind said without any leaves them behind.
    const before = known === undefined || known === job.leather[layer]?.known ? job.leather[layer] : {};
    return { ...before, ...(known && { known }), ...(strips && { strips }) };
  };
  const leather = Object.fromEntries(upperLayers.flatMap((layer) => (said(layer) ? [[layer, said(layer)]] : [])));
  return { job: { ...job, leather, lasting: { ...job.lasting, ...((options.correct || options.toMarks) && { correct: true }) } }, findings: read.flatMap(({ findings }) => findings) };
}
