// From a path on the command line to a job: a scan gets a fresh job, a saved job is opened with the scan that belongs to it.
import { existsSync } from "node:fs";
import { basename, dirname, join } from "node:path";
import { jobForScan } from "#job/default-job.ts";
import { isJobFile, type OpenedJob, readJobFile } from "#job/job-file.ts";
import { readInput } from "./input.ts";

export function openJob(path: string): OpenedJob {
  const bytes = readInput(path);
  const name = basename(path);
  if (!isJobFile(name, bytes)) return { job: jobForScan(name), files: new Map([[name, bytes]]) };
  const opened = readJobFile(name, bytes);
  const { last } = opened.job;
  if (last.from === "measures" || opened.files.has(last.file)) return opened;
  // A job kept as plain text has its scan beside it; where it is not, the pipeline says so.
  const beside = join(dirname(path), last.file);
  return existsSync(beside) ? { job: opened.job, files: new Map([...opened.files, [last.file, readInput(beside)]]) } : opened;
}
