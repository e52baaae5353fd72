import { defaultJob } from "#job/default-job.ts";
import type { Job, LastSource, OutlineFiles } from "#job/job.ts";
import type { Side } from "#last/last.ts";
import type { LastMeasurements } from "#last/measured.ts";
import type { TapeMark, TapePlace, TapeSaid } from "#tape/said.ts";
import { shellForNext } from "./edits.ts";

/** Each edit gives a new job and leaves the old one alone. Those of a taped pattern give other jobs back as they are. */
type TapeJob = Job & { readonly last: LastSource & { readonly from: "tape" } };

const isTaped = (job: Job): job is TapeJob => job.last.from === "tape";

/** What the maker says about her tape, if this work is on one. */
export const tapeOf = (job: Job): TapeSaid | undefined => (isTaped(job) ? job.last.tape : undefined);

/**
 * Pictures added to a taped pattern, or a new work on them: what belonged to a former last follows the rules again; paper and
 * allowances stay the maker's, and so do her name for the work (unless it is the example's) and the side of her last.
 */
export function withPhotos(job: Job, photos: readonly string[]): Job {
  if (isTaped(job)) return said(job, { photos: [...new Set([...job.last.tape.photos, ...photos])] });
  const example = defaultJob().title;
  const title = job.title === example ? "My taped pattern" : job.title;
  return { ...job, title, size: job.title === example ? "" : job.size, lines: {}, shell: shellForNext(job), last: { from: "tape", tape: { photos: [...new Set(photos)], side: sideOf(job) } } };
}

/** A picture taken out, with the marks placed in it. The last one stays: without any there is no pattern. */
export function withoutPhoto(job: Job, photo: string): Job {
  if (!isTaped(job) || job.last.tape.photos.length < 2) return job;
  const { photos, marks, ...rest } = job.last.tape;
  return { ...job, last: { from: "tape", tape: { ...rest, photos: photos.filter((p) => p !== photo), ...marksLeft(marks, (_, place) => place.photo !== photo) } } };
}

export function setTapeSide(job: Job, side: Side): Job {
  return said(job, { side });
}

export function setFaceDown(job: Job, faceDown: boolean): Job {
  return said(job, { faceDown });
}

/** What her rule reads on the card's bar, or nothing: of a taped pattern, or of drawn outlines. */
export function setBar(job: Job, barMm: number | undefined): Job {
  const { last } = job;
  const read = barMm === undefined ? {} : { barMm };
  if (last.from === "measures" && last.outlines) {
    const { barMm: _, ...outlines } = last.outlines;
    return { ...job, last: { ...last, outlines: { ...outlines, ...read } } };
  }
  if (last.from !== "tape") return job;
  const { barMm: _, ...tape } = last.tape;
  return { ...job, last: { from: "tape", tape: { ...tape, ...read } } };
}

export function setMark(job: Job, mark: TapeMark, place: TapePlace): Job {
  return isTaped(job) ? said(job, { marks: { ...job.last.tape.marks, [mark]: place } }) : job;
}

/** Lets the mark stand where it is found again. */
export function followFound(job: Job, mark: TapeMark): Job {
  if (!isTaped(job) || !job.last.tape.marks?.[mark]) return job;
  const { marks, ...rest } = job.last.tape;
  return { ...job, last: { from: "tape", tape: { ...rest, ...marksLeft(marks, (name) => name !== mark) } } };
}

/** All measures at once, and the size that they are of. */
export function setMeasures(job: Job, measures: LastMeasurements, size: string): Job {
  return job.last.from === "measures" ? { ...job, size, last: { ...job.last, measures } } : job;
}

/** A drawing of the last for a last made from measures, or none any more. */
export function setOutline(job: Job, which: "bottom" | "side", photo: string | undefined): Job {
  const { last } = job;
  if (last.from !== "measures") return job;
  const { [which]: _, ...others } = last.outlines ?? {};
  const outlines: OutlineFiles = photo === undefined ? others : { ...others, [which]: photo };
  const { from, measures } = last;
  return { ...job, last: outlines.bottom === undefined && outlines.side === undefined ? { from, measures } : { from, measures, outlines } };
}

/** The side of the last at hand, as far as the job says it. */
function sideOf({ last }: Job): Side {
  if (last.from === "measures") return last.measures.side;
  return (last.from === "tape" ? last.tape.side : last.said?.side) ?? "right";
}

function said(job: Job, part: Partial<TapeSaid>): Job {
  return isTaped(job) ? { ...job, last: { from: "tape", tape: { ...job.last.tape, ...part } } } : job;
}

function marksLeft(marks: TapeSaid["marks"], keep: (mark: string, place: TapePlace) => boolean): Pick<TapeSaid, "marks"> {
  const left = Object.entries(marks ?? {}).filter(([mark, place]) => keep(mark, place));
  return left.length > 0 ? { marks: Object.fromEntries(left) } : {};
}
