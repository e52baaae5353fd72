// `lastwise make LAST|JOB|PICTURES --out DIR`
import { basename, join } from "node:path";
import type { Command } from "commander";
import { finding, type Finding } from "#base/findings.ts";
import { Refusal } from "#base/refusal.ts";
import type { Watch } from "#base/watch.ts";
import { defaultJob } from "#job/default-job.ts";
import type { Files } from "#job/files.ts";
import { correctedToMarks, foretell, Laster, usualSizes } from "#job/lasting.ts";
import type { OpenedJob } from "#job/job-file.ts";
import type { Job } from "#job/job.ts";
import { makingOfPair } from "#job/making.ts";
import { readyFor } from "#job/pictures.ts";
import { Pipeline } from "#job/pipeline.ts";
import { Prover, tryOut } from "#job/proof.ts";
import { sheetsFor } from "#job/sheets-for.ts";
import type { Side } from "#last/last.ts";
import { sheetChoicesFrom } from "#sheets/choices.ts";
import { withoutCutWords } from "#sheets/layer-words.ts";
import { springRange } from "#shell/spring-range.ts";
import { exitFor } from "./exit.ts";
import { withSide } from "./measure.ts";
import { addLeatherOptions, withLeatherOptions, type LeatherOptions } from "./leather-options.ts";
import { addMakingOptions, withMakingOptions, type MakingOptions } from "./making-options.ts";
import { openAll, withTapeWords } from "./open.ts";
import { checkRoom, keepResults } from "./out-folder.ts";
import { addPartOptions, refuseParted, withPartOptions, type PartOptions } from "./part-options.ts";
import { watched } from "./progress.ts";
import { addReadings, withReadings, type Readings } from "./readings.ts";
import { sayFindings, sayPair, sayProof } from "./say.ts";
import { sayForetold } from "./say-lasting.ts";
import { sayMaking } from "./say-making.ts";
import { uninterrupted } from "./uninterrupted.ts";
import { millimetres, oneOf, textUpTo } from "./values.ts";

interface Options extends Readings, PartOptions, LeatherOptions, MakingOptions {
  readonly out: string;
  readonly example?: true;
  readonly title?: string;
  readonly size?: string;
  readonly side?: Side;
  readonly tape?: Side;
  readonly faceDown?: true;
  readonly bar?: number;
  readonly throat?: number;
  readonly back?: number;
  readonly inner?: number;
  readonly outer?: number;
  readonly spring?: number;
  readonly untried?: true;
  readonly json?: true;
}

export function addMake(program: Command): void {
  const command = program
    .command("make")
    .summary("make the pattern of one pair")
    .description("Makes the true-scale pattern of one pair from the scan of a last, from a saved job or from pictures of a taped pattern, with the rules of construction for all that is not said.")
    .argument("[last...]", "the scan (STL, OBJ, PLY, GLB, 3MF, OFF), or a saved job (.lastwise, .json), or pictures of a taped pattern (JPEG, PNG)")
    .requiredOption("--out <folder>", "where the sheets go")
    .option("--example", "the invented example pair instead of a last of your own")
    .option("--title <text>", "what is written on every piece", textUpTo("--title", 200))
    .option("--size <text>", "the size as you say it, e.g. 38", textUpTo("--size", 40))
    .option("--side <side>", "left or right, where you know better than the scan shows", oneOf("--side", ["left", "right"]));
  addReadings(command)
    .option("--tape <side>", "the pictures show the taped pattern of a left or right last, cut in two halves, beside the printed card", oneOf("--tape", ["left", "right"]))
    .option("--face-down", "the taped halves lie with the side that was on the last upward")
    .option("--bar <mm>", "what your own rule reads on the card's printed bar", millimetres("--bar", 150, 250))
    .option("--throat <mm>", "throat depth: toe point to throat along the centre, on the surface", millimetres("--throat", 20, 150))
    .option("--back <mm>", "back height above the feather line", millimetres("--back", 20, 120))
    .option("--inner <mm>", "height of the inner side where it is lowest", millimetres("--inner", 10, 100))
    .option("--outer <mm>", "height of the outer side where it is lowest", millimetres("--outer", 10, 100))
    .option("--spring <mm>", "how far the heel ends of the flat pattern are swung together", millimetres("--spring", -springRange.most, springRange.most));
  addPartOptions(command);
  addLeatherOptions(command);
  addMakingOptions(command)
    .option("--untried", "leave out trying the pattern on the last: no check, nicks, seams and halves; quicker by about two seconds")
    .option("--json", "print the report as JSON instead of sentences")
    .option("--verbose", "show the inner details of a mistake of ours")
    .addHelpText("after", "\nFor example:\n  lastwise make my-last.stl --side left --stick-length 251 --out pair\n  lastwise make in.jpg out.jpg bottom.jpg --tape right --bar 200 --out pair")
    .action(make);
}

async function make(paths: readonly string[], options: Options): Promise<void> {
  refuseParted(paths);
  const { job: chosen, files, findings = [] } = choose(paths, options);
  const { job, findings: unread, byRow } = withLeatherOptions(withReadings(chosen, options, paths[0] === undefined ? "the example" : basename(paths[0])), options);
  const { job: wished, findings: unlisted } = withMakingOptions(withWishes(job, options), options);
  await uninterrupted(() => checkRoom(options.out));
  const { pair, making, proof, foretold, sheets } = await watched((watch) => work(wished, files, { changed: [...findings, ...unread, ...unlisted], byRow }, options, watch));
  const found = [...pair.findings, ...making.findings];
  await uninterrupted(() => keepResults(options.out, sheets));

  if (options.json) {
    const report = sheets.find((sheet) => sheet.name === "report.json");
    console.log(report ? new TextDecoder().decode(report.bytes).trimEnd() : "{}");
  } else {
    const written = `Written to ${join(options.out, "/")}: ${sheets.map((sheet) => sheet.name).join(", ")}.`;
    const last = [written, withoutCutWords(sheetChoicesFrom(pair.job.sheets).layers), "Print at 100 % and measure the scale bars before you cut."];
    console.log([sayPair(pair), proof && sayProof(proof), foretold && sayForetold(foretold), sayMaking(making), sayFindings(found), last.filter(Boolean).join("\n")].filter(Boolean).join("\n\n"));
  }
  process.exitCode = exitFor(found);
}

/** As many trials as are allowed are seldom needed: their share is told so that few of them are most of it already, and the bar does not leap when they are done. */
const sooner = (fraction: number): number => (fraction >= trialsShare ? fraction : trialsShare * (1 - 0.6 ** ((8 * fraction) / trialsShare)));
const trialsShare = 0.8;

/** The pair, how it does when it is tried out, and its sheets. */
async function work(asked: Job, files: Files, { changed, byRow }: { readonly changed: readonly Finding[]; readonly byRow: (findings: readonly Finding[]) => readonly Finding[] }, { untried, toMarks, foretell: askedToo }: Options, watch: Watch) {
  await readyFor(asked);
  const pipeline = new Pipeline(), laster = new Laster(pipeline);
  const now = (): number => performance.now();
  const begun = now();
  if (toMarks) pipeline.run(asked, files, { watch, triangles: usualSizes.pulled, withoutPieces: true });
  const { job, findings: corrected } = toMarks ? correctedToMarks(laster, asked, files, (_, fraction) => watch("correct to the marks", sooner(fraction))) : { job: asked, findings: [] };
  const start = now();
  const made = pipeline.run(job, files, { watch, now });
  const ready = now();
  const { proof, findings } = untried ? { findings: [] } : tryOut(new Prover(pipeline), job, files, watch);
  const tried = now();
  const { foretold, findings: ends } = askedToo ? foretell(laster, job, files, watch) : { findings: [] };
  const timesMs = { ...made.timesMs, ...(toMarks && { corrected: start - begun }), ...(proof && { tried: tried - ready }), ...(foretold && { foretold: now() - tried }) };
  const pair = { ...made, findings: [...changed, ...byRow(made.findings), ...corrected, ...findings, ...ends], timesMs };
  const making = makingOfPair(pair);
  watch("sheets", 0);
  return { pair, making, proof, foretold, sheets: await sheetsFor(pair, watch, proof, foretold, making) };
}

function choose(paths: readonly string[], { example, tape, faceDown, bar }: Options): OpenedJob {
  if ((paths.length === 0) === (example === undefined)) throw new Refusal(finding("make-what", {}));
  const words = { ...(tape ? { side: tape } : {}), ...(faceDown ? { faceDown } : {}), ...(bar === undefined ? {} : { barMm: bar }) };
  return example ? { job: withTapeWords(defaultJob(), words, "the example"), files: new Map() } : openAll(paths, words);
}

/** The job with what was said on the command line put over it. */
function withWishes(job: Job, options: Options): Job {
  const { title, size, side, spring } = options;
  const lines = { throatDepthMm: options.throat, backHeightMm: options.back, sideHeightMedialMm: options.inner, sideHeightLateralMm: options.outer };
  const wished = Object.fromEntries(Object.entries(lines).filter(([, value]) => value !== undefined));
  const sided = withPartOptions(side ? withSide(job, side) : job, options);
  return {
    ...sided,
    title: title ?? job.title,
    size: size ?? job.size,
    shell: { ...sided.shell, ...(spring === undefined ? {} : { springMm: spring }) },
    lines: { ...job.lines, ...wished },
  };
}
