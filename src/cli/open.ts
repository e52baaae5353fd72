// From paths on the command line to a job: a scan and pictures get a fresh job, a saved job is opened with what belongs to it.
import { existsSync } from "node:fs";
import { basename, dirname, join } from "node:path";
import { finding } from "#base/findings.ts";
import { Refusal } from "#base/refusal.ts";
import { jobForScan, jobForTape } from "#job/default-job.ts";
import { filesOf } from "#job/files.ts";
import { isJobFile, type OpenedJob, readJobFile } from "#job/job-file.ts";
import type { Job } from "#job/job.ts";
import type { Side } from "#last/last.ts";
import { readInput } from "./input.ts";

/** What is said of pictures on the command line; a scan has no use for it, a saved job for some of it where it has pictures. */
export interface TapeWords {
  readonly side?: Side;
  readonly faceDown?: true;
  readonly barMm?: number;
}

/** A picture by its first bytes, or by its name where it is of a kind that cannot be read here, so that the reader of pictures says so. */
const isPicture = (name: string, bytes: Uint8Array): boolean =>
  (bytes[0] === 0xff && bytes[1] === 0xd8) || (bytes[0] === 0x89 && bytes[1] === 0x50 && bytes[2] === 0x4e && bytes[3] === 0x47) || /\.(jpe?g|png|heic|heif|webp|tiff?|bmp|gif)$/i.test(name);

/** One scan, one saved job, or pictures of a taped pattern. Throws a Refusal where the paths are none of these together. */
export function openAll(paths: readonly string[], tape: TapeWords): OpenedJob {
  const inputs = paths.map(inputAt);
  const [first, ...more] = inputs;
  if (first === undefined) throw new Refusal(finding("make-what", {}));
  const pictured = inputs.filter(({ name, bytes }) => isPicture(name, bytes));
  if (pictured.length === 0) {
    if (more.length > 0) throw new Refusal(finding("make-one-last", { files: paths.length }));
    const opened = openInput(first);
    return { ...opened, job: withTapeWords(opened.job, tape, first.name) };
  }
  const odd = inputs.find((input) => !pictured.includes(input));
  if (odd) throw new Refusal(finding("make-mixed", { picture: pictured[0]!.name, file: odd.name }));
  if (tape.side === undefined) throw new Refusal(finding("picture-side-unsaid", {}));
  const files = new Map<string, Uint8Array>();
  for (const { name, bytes } of inputs) {
    if (files.has(name)) throw new Refusal(finding("make-same-name", { file: name }));
    files.set(name, bytes);
  }
  return { job: jobForTape({ photos: [...files.keys()], ...tape, side: tape.side }), files };
}

/** A job with what was said of its pictures; `file` is what it came from. Throws a Refusal where it has no pictures of which that can be said. */
export function withTapeWords(job: Job, { side, faceDown, barMm }: TapeWords, file: string): Job {
  if (side !== undefined) throw new Refusal(finding("make-tape-of-what", { file }));
  const { last } = job;
  const bar = barMm === undefined ? {} : { barMm };
  if (last.from === "tape") return { ...job, last: { ...last, tape: { ...last.tape, ...(faceDown ? { faceDown } : {}), ...bar } } };
  if (faceDown) throw new Refusal(finding("make-face-down-of-what", { file }));
  if (barMm === undefined) return job;
  if (last.from !== "measures" || filesOf(job).length === 0) throw new Refusal(finding("make-bar-of-what", { file }));
  return { ...job, last: { ...last, outlines: { ...last.outlines, ...bar } } };
}

/** One scan or one saved job. Throws a Refusal for a picture. */
export function openJob(path: string): OpenedJob {
  const input = inputAt(path);
  if (isPicture(input.name, input.bytes)) throw new Refusal(finding("picture-not-last", { file: input.name }));
  return openInput(input);
}

interface Input {
  readonly path: string;
  readonly name: string;
  readonly bytes: Uint8Array;
}

const inputAt = (path: string): Input => ({ path, name: basename(path), bytes: readInput(path) });

function openInput({ path, name, bytes }: Input): OpenedJob {
  if (!isJobFile(name, bytes)) return { job: jobForScan(name), files: new Map([[name, bytes]]) };
  const opened = readJobFile(name, bytes);
  const files = new Map(opened.files);
  // A job kept as plain text has its scans and pictures beside it; where one is not, the pipeline says so.
  for (const file of filesOf(opened.job)) {
    const beside = join(dirname(path), file);
    if (!files.has(file) && existsSync(beside)) files.set(file, readInput(beside));
  }
  return { ...opened, files };
}
