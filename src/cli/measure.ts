// `lastwise measure LAST`
import { basename } from "node:path";
import type { Command } from "commander";
import { finding } from "#base/findings.ts";
import { Refusal } from "#base/refusal.ts";
import type { Watch } from "#base/watch.ts";
import type { Files } from "#job/files.ts";
import type { OpenedJob } from "#job/job-file.ts";
import type { Job } from "#job/job.ts";
import { Memory } from "#job/memory.ts";
import { readyFor } from "#job/pictures.ts";
import { cleanedScan, readLast } from "#job/read-last.ts";
import { compareLasts, type LastComparison } from "#last/compare.ts";
import { describeLast } from "#last/describe.ts";
import { measureFoot, type Foot } from "#last/foot.ts";
import { landmarkHelp, measureHelp } from "#last/help.ts";
import type { Last, Side } from "#last/last.ts";
import { placedIn } from "#last/place-repairs.ts";
import { compareReport, footReport } from "#sheets/compare-report.ts";
import { measureReport } from "#sheets/measure-report.ts";
import { exitFor } from "./exit.ts";
import { openJob } from "./open.ts";
import { watched } from "./progress.ts";
import { addReadings, readingsGiven, withReadings, type Readings } from "./readings.ts";
import { sayComparison, sayDescription, sayFoot, sayHelp, sayLast } from "./say-measures.ts";
import { sayFindings } from "./say.ts";
import { oneOf } from "./values.ts";

interface Options extends Readings {
  readonly side?: Side;
  readonly beside?: string;
  readonly explain?: true;
  readonly json?: true;
}

export function addMeasure(program: Command): void {
  const command = program
    .command("measure")
    .summary("measure a last, or hold two against each other")
    .description("Reads the scan of a last (STL, OBJ, PLY, GLB, 3MF, OFF; any unit) and says its side, lengths and girths, its shape in numbers, and what is doubtful. The scan of a foot is measured as a foot.")
    .argument("<last>", "the scan, or a saved job")
    .option("--side <side>", "left or right, where you know better than the scan shows", oneOf("--side", ["left", "right"]));
  addReadings(command)
    .option("--beside <other>", "hold a second last against it: are they a pair?")
    .option("--explain", "say of every measure and landmark what it is, how it was found and how to find it by hand")
    .option("--json", "print one JSON object instead of sentences")
    .option("--verbose", "show the inner details of a mistake of ours")
    .addHelpText("after", "\nFor example:\n  lastwise measure my-last.stl --stick-length 251 --ball-width 75\n  lastwise measure left.stl --side left --beside right.stl")
    .action(measure);
}

async function measure(path: string, options: Options): Promise<void> {
  const { job, files } = openJob(path);
  const read = withReadings(job, options, basename(path));
  const asked = options.side ? withSide(read, options.side) : read;
  const other = options.beside === undefined ? undefined : openJob(options.beside);
  const found = await watched(async (watch): Promise<Found> => {
    await readyFor(asked);
    const last = lastOrFoot(asked, files, watch);
    if ("points" in last) {
      refuseOnFoot(basename(path), options);
      return { foot: last };
    }
    if (!other) return { last };
    await readyFor(other.job);
    const beside = secondLast(other, basename(options.beside ?? ""), watch);
    return { last, beside, comparison: compareLasts(last, beside, watch) };
  });
  console.log(options.json ? JSON.stringify(asReport(found, basename(path), options.explain === true), null, 1) : asSentences(found, basename(path), options.explain === true));
  process.exitCode = exitFor(found.foot ? found.foot.findings : [...found.last.findings, ...(found.comparison?.findings ?? [])]);
}

type Found =
  | { readonly foot: Foot; readonly last?: never; readonly beside?: never; readonly comparison?: never }
  | { readonly foot?: never; readonly last: Last; readonly beside?: Last; readonly comparison?: LastComparison };

/** The last, or the foot where the scan turns out to be one. */
function lastOrFoot(job: Job, files: Files, watch: Watch): Last | Foot {
  const stages = new Memory().start(watch, () => 0);
  try {
    return readLast(job, files, watch, stages);
  } catch (error) {
    if (!(error instanceof Refusal && error.finding.code === "foot-has-no-pattern") || job.last.from !== "scan") throw error;
    const { file, said } = job.last;
    const { mesh, repairs } = cleanedScan(stages, "", file, files, watch).value;
    const foot = measureFoot(mesh, watch);
    const kept = said?.side !== undefined && said.side !== foot.side ? [finding("foot-side-kept", { side: foot.side, said: said.side })] : [];
    return { ...foot, findings: [...placedIn(repairs, foot.placement), ...foot.findings, ...kept] };
  }
}

/** What is asked of a foot that only lasts can answer is not passed over in silence. */
function refuseOnFoot(file: string, options: Options): void {
  const { beside, explain } = options;
  const [reading] = readingsGiven(options);
  if (reading !== undefined) throw new Refusal(finding("measure-foot-option", { file, option: reading }));
  if (beside !== undefined) throw new Refusal(finding("measure-foot-option", { file, option: "--beside" }));
  if (explain) throw new Refusal(finding("measure-foot-option", { file, option: "--explain" }));
}

/** The last of `--beside`; where it cannot be read, the refusal says of which of the two files it speaks. */
function secondLast({ job, files }: OpenedJob, file: string, watch: Watch): Last {
  try {
    return readLast(job, files, watch);
  } catch (error) {
    if (!(error instanceof Refusal)) throw error;
    if (error.finding.code === "foot-has-no-pattern") throw new Refusal(finding("measure-foot-option", { file, option: "--beside" }));
    throw new Refusal(finding("measure-second-refused", { file, why: error.message }));
  }
}

function asReport({ foot, last, beside, comparison }: Found, name: string, explained: boolean): object {
  if (foot) return footReport(name, foot);
  const held = beside && comparison ? { beside: measureReport(beside), comparison: compareReport(comparison) } : {};
  return { ...measureReport(last), ...held, ...(explained ? { explained: { landmarks: landmarkHelp, measures: measureHelp } } : {}) };
}

function asSentences({ foot, last, beside, comparison }: Found, name: string, explained: boolean): string {
  if (foot) return [sayFoot(name, foot), sayFindings(foot.findings)].filter(Boolean).join("\n\n");
  const findings = [...last.findings, ...(comparison?.findings ?? [])];
  const held = beside && comparison ? [sayComparison(last, beside, comparison)] : [];
  return [sayLast(last), sayDescription(describeLast(last)), ...held, ...(explained ? [sayHelp(last)] : []), sayFindings(findings)].filter(Boolean).join("\n\n");
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
