import { defaultJob, jobForScan } from "#job/default-job.ts";
import type { Job } from "#job/job.ts";
import type { Side } from "#last/last.ts";
import type { LastMeasurements } from "#last/measured.ts";
import type { LineSettings } from "#lines/lines.ts";
import type { PartChoices } from "#pieces/choices.ts";
import type { PieceSettings } from "#pieces/settings.ts";
import type { SheetChoices } from "#sheets/choices.ts";
import type { ShellSettings } from "#shell/settings.ts";
import { sizeWords } from "./measure-rule.ts";

/** Each edit gives a new job and leaves the old one alone. */
export function setLines(job: Job, lines: Partial<LineSettings>): Job {
  return { ...job, lines: { ...job.lines, ...lines } };
}

/** Lets the rule of construction say again. */
export function followLineRule(job: Job, key: keyof LineSettings): Job {
  const { [key]: _, ...rest } = job.lines;
  return { ...job, lines: rest };
}

export function setPiece(job: Job, key: keyof PieceSettings, value: number): Job {
  return { ...job, pieces: { ...job.pieces, [key]: value } };
}

export function followPieceRule(job: Job, key: keyof PieceSettings): Job {
  const { [key]: _, ...rest } = job.pieces;
  return { ...job, pieces: rest };
}

export function setParts(job: Job, parts: Partial<PartChoices>): Job {
  return { ...job, parts: { ...job.parts, ...parts } };
}

export function setSheets(job: Job, sheets: Partial<SheetChoices>): Job {
  return { ...job, sheets: { ...job.sheets, ...sheets } };
}

/** As it is usual again. */
export function followUsualSheet(job: Job, key: keyof SheetChoices): Job {
  const { [key]: _, ...rest } = job.sheets;
  return { ...job, sheets: rest };
}

export function setShell(job: Job, shell: Partial<ShellSettings>): Job {
  return { ...job, shell: { ...job.shell, ...shell } };
}

export function followShellRule(job: Job, key: keyof ShellSettings): Job {
  const { [key]: _, ...rest } = job.shell;
  return { ...job, shell: rest };
}

/** The spring belongs to a last; leather, edge and what lies beneath the upper stay the maker's on the next one. */
export const shellForNext = (job: Job): Job["shell"] => followShellRule(job, "springMm").shell;

/** Changes one measure of a last made from measures; a scan has none to change, its job comes back as it is. */
export function setMeasure<K extends keyof LastMeasurements>(job: Job, key: K, value: LastMeasurements[K]): Job {
  if (job.last.from !== "measures") return job;
  const { measures } = job.last;
  // A size that only repeats what stick length and toe say goes with them; one of her own stays.
  const changed = { ...measures, [key]: value };
  const size = (key === "stickLengthMm" || key === "toe") && job.size === sizeWords(measures) ? sizeWords(changed) : job.size;
  return { ...job, size, last: { ...job.last, measures: changed } };
}

/** The leathers on the maker's bench, how she pulls, and what she wrote down of the shoes so far: they stay hers on the next last. */
export const benchOf = (job: Job): Pick<Job, "leather" | "lasting" | "log"> => ({ leather: job.leather, lasting: job.lasting, log: job.log });

/** A new job on a scan: what belonged to the former last follows the rules again; paper and allowances stay the maker's. */
export function onScan(job: Job, file: string): Job {
  return { ...jobForScan(file), parts: job.parts, sheets: job.sheets, shell: shellForNext(job), pieces: job.pieces, ...benchOf(job) };
}

/** A new job on a last made from measures, which begin as those of the example; the side stays that of the last at hand. */
export function onMeasures(job: Job, side: Side): Job {
  const fresh = defaultJob();
  if (fresh.last.from !== "measures") return fresh;
  return { ...fresh, title: "My last from measures", size: "", parts: job.parts, sheets: job.sheets, shell: shellForNext(job), pieces: job.pieces, ...benchOf(job), last: { from: "measures", measures: { ...fresh.last.measures, side } } };
}

/** Nothing has been changed yet. */
export const isExample = (job: Job): boolean => JSON.stringify(job) === JSON.stringify(defaultJob());
