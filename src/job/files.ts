import { finding } from "#base/findings.ts";
import { Refusal } from "#base/refusal.ts";
import type { Job } from "./job.ts";

/** Beyond this no scan of a last goes, and no saved job with its scan; it would only fill the memory. */
export const mostBytes = 1e9;

/** The files that lie beside a job, by the name under which the job speaks of them. */
export type Files = ReadonlyMap<string, Uint8Array>;

/** Every file that a job speaks of, each once. */
export function filesOf({ last }: Job): readonly string[] {
  const named = (): (string | undefined)[] => {
    switch (last.from) {
      case "measures": return [last.outlines?.bottom, last.outlines?.side];
      case "scan": return [last.file, last.other?.file];
      case "tape": return [...last.tape.photos];
    }
  };
  return [...new Set(named().filter((name) => name !== undefined))];
}

/** The same job, with what it called `from` called `to`. */
export function renamed(job: Job, from: string, to: string): Job {
  const name = (file: string): string => (file === from ? to : file);
  const { last } = job;
  switch (last.from) {
    case "measures": {
      const { bottom, side, ...rest } = last.outlines ?? {};
      if (bottom !== from && side !== from) return job;
      return { ...job, last: { ...last, outlines: { ...rest, ...(bottom !== undefined ? { bottom: name(bottom) } : {}), ...(side !== undefined ? { side: name(side) } : {}) } } };
    }
    case "scan": return { ...job, last: { ...last, file: name(last.file), ...(last.other ? { other: { ...last.other, file: name(last.other.file) } } : {}) } };
    case "tape": {
      const { photos, marks } = last.tape;
      const places = marks && Object.fromEntries(Object.entries(marks).map(([mark, place]) => [mark, { ...place, photo: name(place.photo) }]));
      return { ...job, last: { from: "tape", tape: { ...last.tape, photos: photos.map(name), ...(places ? { marks: places } : {}) } } };
    }
  }
}

/** The bytes of a named file; refuses when it is missing. */
export function fileOf(name: string, files: Files): Uint8Array {
  const bytes = files.get(name);
  if (!bytes) throw new Refusal(finding("job-file-missing", { file: name }));
  return bytes;
}
