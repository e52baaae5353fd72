import { finding, type Finding } from "#base/findings.ts";
import { Refusal } from "#base/refusal.ts";
import type { Watch } from "#base/watch.ts";
import { compareLasts } from "#last/compare.ts";
import { lastFromMeasures } from "#last/from-measures.ts";
import { lastFromScan } from "#last/from-scan.ts";
import { isFoot } from "#last/is-foot.ts";
import type { Last } from "#last/last.ts";
import type { LastOutlines } from "#last/measured.ts";
import { placeRepairs } from "#last/place-repairs.ts";
import type { SaidOfScan } from "#last/said.ts";
import { cleanScan } from "#mesh/clean.ts";
import { readScan } from "#mesh/read.ts";
import type { TracedPicture } from "#tape/taped-shell.ts";
import { digest } from "./digest.ts";
import { fileOf, type Files } from "./files.ts";
import type { Job, LastSource, OtherLast } from "./job.ts";
import { Memory, type Made, type Run } from "./memory.ts";
import type { OtherHeld } from "./pair.ts";
import { largestOutline, traced } from "./pictures.ts";
import { sizeSaid } from "./size-said.ts";

/** A last, and what came to light beside it. */
export interface ReadLast {
  readonly last: Last;
  /** The second last of the pair, held against the first. */
  readonly other?: OtherHeld;
  /** The drawings that a made last was shaped after, as they were traced. */
  readonly traces?: readonly TracedPicture[];
  /** Of the last and of the rest. */
  readonly findings: readonly Finding[];
}

/** The first stages: the last of a job, with what was repaired and what is doubtful. */
export function lastOf(stages: Run, job: Job, files: Files, watch: Watch): Made<ReadLast> {
  const { last } = job;
  switch (last.from) {
    case "measures": return madeLast(stages, last, job, files, watch);
    case "scan": return scannedLast(stages, last, files, watch);
    case "tape": throw new Refusal(finding("tape-has-no-last", {}));
  }
}

/** The same for those who need nothing else of the job. */
export function readLast(job: Job, files: Files, watch: Watch, stages = new Memory().start(watch, () => 0)): Last {
  const { last, findings } = lastOf(stages, job, files, watch).value;
  return { ...last, findings };
}

function madeLast(stages: Run, { measures, outlines }: LastSource & { from: "measures" }, { title, size }: Job, files: Files, watch: Watch): Made<ReadLast> {
  const { bottom, side, barMm } = outlines ?? {};
  const said = barMm === undefined ? {} : { barMm };
  const made = traced(stages, [bottom, side].filter((photo) => photo !== undefined), said, files, watch);
  const sizeEu = sizeSaid(size);
  return stages.make("last", [measures, title, sizeEu ?? 0, outlines ?? {}, ...made.map(({ key }) => key)], () => {
    const traces = made.map(({ value }) => value);
    const shapes: LastOutlines = {
      ...(bottom !== undefined ? { bottom: largestOutline(traces[0]!) } : {}),
      ...(side !== undefined ? { side: largestOutline(traces[traces.length - 1]!) } : {}),
    };
    const last = lastFromMeasures(measures, title, watch, traces.length > 0 ? shapes : undefined, sizeEu);
    const findings = [...traces.flatMap((picture) => picture.traced.findings), ...last.findings];
    return { last, findings, ...(traces.length > 0 ? { traces } : {}) };
  });
}

/** A scan is cleaned once, whatever the maker says of it afterwards; the second last of a pair has stages of its own. */
function scannedLast(stages: Run, { file, said, other }: LastSource & { from: "scan" }, files: Files, watch: Watch): Made<ReadLast> {
  const first = scanned(stages, "", file, said, files, watch);
  if (!other) return { key: first.key, value: { last: first.value, findings: first.value.findings } };
  const second = secondOf(stages, other, files, watch);
  if ("code" in second) return { key: first.key, value: { last: first.value, findings: [...first.value.findings, second] } };
  const held = stages.make("comparison", [first.key, second.key], () => compareLasts(first.value, second.value, watch));
  const value: ReadLast = {
    last: first.value,
    other: { last: second.value, comparison: held.value },
    findings: [...first.value.findings, ...held.value.findings],
  };
  // What follows is made from the first last alone.
  return { key: first.key, value };
}

/** The pair is made from the first last alone, so a second one that is no use is told and left out. */
function secondOf(stages: Run, { file, said }: OtherLast, files: Files, watch: Watch): Made<Last> | Finding {
  try {
    return scanned(stages, "second ", file, said, files, watch);
  } catch (error) {
    if (!(error instanceof Refusal)) throw error;
    return finding("second-last-refused", { file, why: error.message });
  }
}

/** A scan as it was read, and cleaned. */
export function cleanedScan(stages: Run, which: "" | "second ", file: string, files: Files, watch: Watch) {
  const bytes = fileOf(file, files);
  return stages.make(`${which}scan`, [file, digest(bytes)], () => {
    const { mesh } = readScan(file, bytes);
    return { raw: mesh, ...cleanScan(mesh, watch) };
  });
}

function scanned(stages: Run, which: "" | "second ", file: string, said: SaidOfScan | undefined, files: Files, watch: Watch): Made<Last> {
  const clean = cleanedScan(stages, which, file, files, watch);
  return stages.make(`${which}last`, [clean.key, said ?? {}], () => {
    const { raw, mesh, repairs } = clean.value;
    const last = lastFromScan(mesh, { name: file, scanned: raw, ...said }, watch);
    // A feather line that the maker drew says that it is a last.
    if (!said?.featherThrough?.length && isFoot(mesh, last)) throw new Refusal(finding("foot-has-no-pattern", {}));
    return { ...last, findings: [...placeRepairs(repairs, last), ...last.findings] };
  });
}
