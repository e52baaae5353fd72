// `lastwise measure LAST`
import type { Command } from "commander";
import type { Job } from "#job/job.ts";
import { readyFor } from "#job/pictures.ts";
import { readLast } from "#job/read-last.ts";
import type { Side } from "#last/last.ts";
import { measureReport } from "#sheets/measure-report.ts";
import { exitFor } from "./exit.ts";
import { openJob } from "./open.ts";
import { watched } from "./progress.ts";
import { sayFindings, sayLast } from "./say.ts";
import { oneOf } from "./values.ts";

interface Options {
  readonly side?: Side;
  readonly json?: true;
}

export function addMeasure(program: Command): void {
  program
    .command("measure")
    .summary("measure a last")
    .description("Reads the scan of a last (STL, OBJ, PLY, GLB; any unit) and says its side, lengths and girths, and what is doubtful.")
    .argument("<last>", "the scan, or a saved job")
    .option("--side <side>", "left or right, where you know better than the scan shows", oneOf("--side", ["left", "right"]))
    .option("--json", "print one JSON object instead of sentences")
    .option("--verbose", "show the inner details of a mistake of ours")
    .action(measure);
}

async function measure(path: string, { side, json }: Options): Promise<void> {
  const { job, files } = openJob(path);
  const last = await watched(async (watch) => {
    await readyFor(job);
    watch("last", 0);
    return readLast(side ? withSide(job, side) : job, files, watch);
  });
  console.log(json ? JSON.stringify(measureReport(last), null, 1) : [sayLast(last), sayFindings(last.findings)].filter(Boolean).join("\n\n"));
  process.exitCode = exitFor(last.findings);
}

/** The same job with the maker's word on which foot the last is for. */
export function withSide(job: Job, side: Side): Job {
  const { last } = job;
  switch (last.from) {
    case "scan": return { ...job, last: { ...last, said: { ...last.said, side } } };
    case "measures": return { ...job, last: { ...last, measures: { ...last.measures, side } } };
    case "tape": return { ...job, last: { ...last, tape: { ...last.tape, side } } };
  }
}
