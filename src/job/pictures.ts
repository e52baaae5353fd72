import { finding } from "#base/findings.ts";
import { Refusal } from "#base/refusal.ts";
import type { Watch } from "#base/watch.ts";
import { readyForPhotos } from "#photo/image-library.ts";
import { readPicture } from "#photo/read-picture.ts";
import { printScaleOf, type SaidOfCard } from "#photo/scale-said.ts";
import { inTrueMm, traceAsDrawn } from "#photo/trace-photo.ts";
import type { Outline } from "#plane/outline.ts";
import type { TracedPicture } from "#tape/taped-shell.ts";
import { digest } from "./digest.ts";
import { fileOf, filesOf, type Files } from "./files.ts";
import type { Job } from "./job.ts";
import type { Made, Run } from "./memory.ts";

/** To be awaited before a job is run: brings in the image library where the job has pictures, else nothing. */
export async function readyFor(job: Job): Promise<void> {
  // The files of a job that has no scan are its pictures.
  if (job.last.from !== "scan" && filesOf(job).length > 0) await readyForPhotos();
}

/** Pictures with what was traced in them; where there are several, one that cannot be used is refused by its name. */
export function traced(stages: Run, photos: readonly string[], said: SaidOfCard, files: Files, watch: Watch, tell: (picture: TracedPicture) => void = () => {}): readonly Made<TracedPicture>[] {
  return photos.map((photo) => {
    const bytes = fileOf(photo, files);
    const scale = printScaleOf(said);
    // Traced once, whatever the maker's rule reads on the card's bar: that only rescales what was traced.
    const drawn = stages.make(`photo ${photo}`, [digest(bytes)], () => {
      try {
        return traceAsDrawn(readPicture(photo, bytes), watch);
      } catch (error) {
        // What the reader of pictures says names the file already.
        if (!(error instanceof Refusal) || photos.length === 1 || !error.finding.code.startsWith("photo-")) throw error;
        throw new Refusal(finding("picture-refused", { photo, why: error.message }));
      }
    });
    const made: Made<TracedPicture> = { key: `${drawn.key} at ${JSON.stringify(said)}`, value: { photo, traced: inTrueMm(drawn.value, scale) } };
    tell(made.value);
    return made;
  });
}

/** The outline of the one thing that was drawn in a picture. */
export function largestOutline({ photo, traced: { outlines } }: TracedPicture): Outline {
  const [largest] = outlines;
  if (!largest) throw new Refusal(finding("drawing-missing", { photo }));
  return largest;
}
