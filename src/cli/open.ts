// From a path on the command line to a job: a scan gets a fresh job, a saved job is opened with the scan that belongs to it.
import { existsSync } from "node:fs";
import { basename, dirname, join } from "node:path";
import { jobForScan } from "#job/default-job.ts";
import { filesOf } from "#job/files.ts";
import { isJobFile, type OpenedJob, readJobFile } from "#job/job-file.ts";
import { readInput } from "./input.ts";

export function openJob(path: string): OpenedJob {
  const bytes = readInput(path);
  const name = basename(path);
  if (!isJobFile(name, bytes)) return { job: jobForScan(name), files: new Map([[name, bytes]]) };
  const opened = readJobFile(name, bytes);
  const files = new Map(opened.files);
  // A job kept as plain text has its scans and pictures beside it; where one is not, the pipeline says so.
  for (const file of filesOf(opened.job)) {
    const beside = join(dirname(path), file);
    if (!files.has(file) && existsSync(beside)) files.set(file, readInput(beside));
  }
  return { job: opened.job, files };
}
