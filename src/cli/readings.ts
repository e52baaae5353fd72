// What the maker's own callipers read on the last that was scanned: it sets the scale of the scan and is held beside what is found on it.
import type { Command } from "commander";
import { finding } from "#base/findings.ts";
import { Refusal } from "#base/refusal.ts";
import type { Job } from "#job/job.ts";
import { millimetres } from "./values.ts";

export interface Readings {
  readonly stickLength?: number;
  readonly ballWidth?: number;
}

export function addReadings(command: Command): Command {
  return command
    .option("--stick-length <mm>", "what your own callipers read on the last, heel to toe; sets the scale of the scan", millimetres("--stick-length", 150, 350))
    .option("--ball-width <mm>", "what they read across the ball, from edge to edge of the bottom; with both, each is checked by the other", millimetres("--ball-width", 40, 150));
}

/** The names of the readings that were given, as they are asked for. */
export const readingsGiven = ({ stickLength, ballWidth }: Readings): readonly string[] => [...(stickLength === undefined ? [] : ["--stick-length"]), ...(ballWidth === undefined ? [] : ["--ball-width"])];

/** The job with these readings put over its own; refuses where it has no scan. `file` is what the job came from. */
export function withReadings(job: Job, readings: Readings, file: string): Job {
  const [first] = readingsGiven(readings);
  if (first === undefined) return job;
  const { last } = job;
  if (last.from !== "scan") throw new Refusal(finding("reading-of-what", { file, option: first }));
  const { stickLength, ballWidth } = readings;
  const measured = { ...last.said?.measured, ...(stickLength === undefined ? {} : { stickLength }), ...(ballWidth === undefined ? {} : { ballWidth }) };
  return { ...job, last: { ...last, said: { ...last.said, measured } } };
}
