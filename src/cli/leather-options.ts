// What is said on the command line about leather and lasting.
import { basename } from "node:path";
import type { Command } from "commander";
import { explain, finding, type Finding } from "#base/findings.ts";
import type { Job } from "#job/job.ts";
import { knownLeathers, upperLayers, type KnownLeather, type LeatherSaid, type Strip, type UpperLayer } from "#leather/leather.ts";
import { fitStrips } from "#leather/fit-strips.ts";
import { usualLeather } from "#leather/leather-from.ts";
import type { StripsRead } from "#leather/strip-csv.ts";
import { knownList, knownWords } from "#leather/strip-words.ts";
import { whereIn } from "#leather/strip-check.ts";
import { readStripTable } from "./strip-table.ts";
import { oneOf } from "./values.ts";

/** Said in place of a file of strips. */
const noStrips = "none";

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
      .option(`--${layer}-leather <leather>`, `what the ${layer} is cut from, or is most like: ${knownList}; strips of it stay`, oneOf(`--${layer}-leather`, knownLeathers))
      .option(`--${layer}-strips <csv>`, `what you read on strips of the ${layer}'s leather, as for lastwise strip; none takes those of the job out`);
  }
  return command
    .option("--correct", "cut the pieces from the pattern that is corrected for how the leather gives")
    .option("--to-marks", "corrected, and cut farther in or out until throat, back and sides end at their marks when it is pulled over; takes some tens of seconds")
    .option("--foretell", "pull the upper over the last draft by draft and tell where throat, back and sides end, with a band; takes some tens of seconds");
}

interface WithLeather {
  readonly job: Job;
  /** What is wrong with rows of strips, and strips that stay though the kind is another. */
  readonly findings: readonly Finding[];
  /** The same findings with strips and readings named as the rows of their file. */
  readonly byRow: (findings: readonly Finding[]) => readonly Finding[];
}
type TableOf = { readonly [L in UpperLayer]?: StripsRead & { readonly file: string } };

/** The job with what was said about leather and lasting put over it. */
export function withLeatherOptions(job: Job, options: LeatherOptions): WithLeather {
  const tables: TableOf = Object.fromEntries(upperLayers.flatMap((layer) => {
    const file = options[`${layer}Strips`];
    return file === undefined || file === noStrips ? [] : [[layer, { ...readStripTable(file), file: basename(file) }]];
  }));
  const leather = Object.fromEntries(upperLayers.flatMap((layer) => {
    const said = saidOf(job.leather[layer], options[`${layer}Leather`], options[`${layer}Strips`] === noStrips ? "none" : tables[layer]?.strips);
    return said ? [[layer, said]] : [];
  }));
  const findings = upperLayers.flatMap((layer) => [...(tables[layer]?.findings ?? []), ...stripsThatStay(job.leather[layer], layer, options)]);
  return { job: { ...job, leather, lasting: { ...job.lasting, ...((options.correct || options.toMarks) && { correct: true }) } }, findings, byRow: namedByRow(leather, tables) };
}

/** What is said of a leather now. Strips stay until they are taken out; with other strips, or none, of another kind it is another skin. */
function saidOf(before: LeatherSaid | undefined, known: KnownLeather | undefined, strips: readonly Strip[] | "none" | undefined): LeatherSaid | undefined {
  if (known === undefined && strips === undefined) return before;
  const another = known !== undefined && known !== before?.known;
  const { strips: former, ...rest } = before ?? {};
  const kept = strips !== undefined && another ? {} : rest;
  const now = strips === undefined ? former : strips === "none" ? undefined : strips;
  return { ...kept, ...(known && { known }), ...(now && { strips: now }) };
}

function stripsThatStay(before: LeatherSaid | undefined, layer: UpperLayer, options: LeatherOptions): Finding[] {
  const known = options[`${layer}Leather`], former = before?.known ?? usualLeather[layer], strips = before?.strips?.length ?? 0;
  if (known === undefined || known === former || strips === 0 || options[`${layer}Strips`] !== undefined) return [];
  return [finding("strips-stay", { layer, option: `--${layer}-strips`, before: knownWords[former], known: knownWords[known], strips })];
}

/** What is found of strips names them as the job holds them; whoever gave a file looks for its rows. */
function namedByRow(leather: Job["leather"], tables: TableOf): WithLeather["byRow"] {
  const rows = new Map(upperLayers.flatMap((layer) => {
    const said = leather[layer], table = tables[layer];
    if (!said?.strips || !table) return [];
    const whole = { ...said, known: said.known ?? usualLeather[layer] };
    const inJob = fitStrips(whole, { where: whereIn(said.strips, layer) }).findings;
    const inFile = fitStrips(whole, { where: (...of) => `${table.file}: ${table.where(...of)}` }).findings;
    return inJob.map((one, i): [string, Finding] => [explain(one), inFile[i]!]);
  }));
  return (findings) => findings.map((one) => rows.get(explain(one)) ?? one);
}
