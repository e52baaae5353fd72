import type { Job, LastSource } from "#job/job.ts";
import type { Point3, Side } from "#last/last.ts";
import type { LandmarkName, MeasureName, SaidOfScan } from "#last/said.ts";

type ScanSource = LastSource & { readonly from: "scan" };

/** What the maker says about her scan; nothing said where the work is not on a scan. Each edit gives other jobs back as they are. */
export const saidOf = ({ last }: Job): SaidOfScan => (last.from === "scan" ? (last.said ?? {}) : {});

export function setScanSide(job: Job, side: Side): Job {
  return says(job, { ...saidOf(job), side });
}

/** Her own reading of a length or girth, mm; `undefined` takes it back. */
export function setReading(job: Job, measure: MeasureName, mm: number | undefined): Job {
  const { measured, ...rest } = saidOf(job);
  return says(job, { ...rest, ...some("measured", changed(measured, measure, mm)) });
}

/** One more place, in the file's coordinates, that the feather line has to pass through. */
export function addPull(job: Job, at: Point3): Job {
  const said = saidOf(job);
  return says(job, { ...said, featherThrough: [...(said.featherThrough ?? []), at] });
}

export function movePull(job: Job, index: number, at: Point3): Job {
  const said = saidOf(job);
  return says(job, { ...said, featherThrough: (said.featherThrough ?? []).map((p, i) => (i === index ? at : p)) });
}

export function dropPull(job: Job, index: number): Job {
  const { featherThrough = [], ...rest } = saidOf(job);
  const left = featherThrough.filter((_, i) => i !== index);
  return says(job, left.length > 0 ? { ...rest, featherThrough: left } : rest);
}

/** A point where the maker puts it, in the file's coordinates; `undefined` lets it be found again. */
export function setPoint(job: Job, name: LandmarkName, at: Point3 | undefined): Job {
  const { landmarks, ...rest } = saidOf(job);
  return says(job, { ...rest, ...some("landmarks", changed(landmarks, name, at)) });
}

/** Holds a second last of the pair beside the scanned one, or no more. */
export function withOther(job: Job, file: string | undefined): Job {
  if (job.last.from !== "scan") return job;
  const { other: _, ...last } = job.last;
  return { ...job, last: file === undefined ? last : { ...last, other: { file } } };
}

function says(job: Job, said: SaidOfScan): Job {
  if (job.last.from !== "scan") return job;
  const { said: _, ...last } = job.last;
  const next: ScanSource = Object.keys(said).length > 0 ? { ...last, said } : last;
  return { ...job, last: next };
}

/** A record with one entry set or taken out; nothing when none is left. */
function changed<K extends string, V>(record: Partial<Record<K, V>> | undefined, key: K, value: V | undefined): Partial<Record<K, V>> | undefined {
  const next: Partial<Record<K, V>> = { ...record };
  if (value === undefined) delete next[key];
  else next[key] = value;
  return Object.keys(next).length > 0 ? next : undefined;
}

function some<K extends string, V>(key: K, value: V | undefined): Partial<Record<K, V>> {
  return value === undefined ? {} : ({ [key]: value } as Partial<Record<K, V>>);
}
