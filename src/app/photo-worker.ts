/// <reference lib="webworker" />
import { Refusal } from "#base/refusal.ts";
import { flatView } from "#photo/flat-view.ts";
import { readyForPhotos } from "#photo/image-library.ts";
import { readPicture } from "#photo/read-picture.ts";
import { tracePhoto } from "#photo/trace-photo.ts";
import type { FlatPhoto, FromPhotoWorker, SeenPhoto, ToPhotoWorker } from "./photo-talk.ts";

/** Lays photographs flat for the page to show, apart from the bench, so that neither waits for the other. */
const scope = self as unknown as DedicatedWorkerGlobalScope;
const tell = (message: FromPhotoWorker, hand: Transferable[] = []): void => scope.postMessage(message, hand);

/** Enough for the finest screen at the nearest view that still shows more than grain. */
const mostPxPerMm = 5;
/** How far tracing is when each of its stages begins; the shares are those of its time. */
const begins: Readonly<Record<string, number>> = { card: 0.25, flat: 0.5, outlines: 0.7 };

async function see({ id, name, bytes, barMm, traced: known }: ToPhotoWorker): Promise<SeenPhoto> {
  const progress = (fraction: number): void => tell({ say: "progress", id, fraction });
  progress(0.05);
  if (!known) await readyForPhotos();
  const picture = readPicture(name, bytes);
  progress(0.25);
  let told = 0;
  const traced = known ?? tracePhoto(picture, barMm === undefined ? {} : { barMm }, (stage, fraction) => {
    const now = performance.now();
    if (now - told < 80) return;
    told = now;
    progress((begins[stage] ?? 0.25) + 0.2 * fraction);
  });
  const pxPerMm = Math.min(mostPxPerMm, Math.max(1, traced.check.pxPerMm));
  const { width, height, rgba } = flatView(picture, traced, pxPerMm);
  const flat: FlatPhoto = { width, height, rgba: new Uint8ClampedArray(rgba.buffer as ArrayBuffer), pxPerMm, minX: traced.window.minX, maxY: traced.window.maxY };
  const { outlines, kinds, check, findings } = traced;
  return { flat, outlines, kinds, check, findings };
}

async function answer(message: ToPhotoWorker): Promise<void> {
  const { id } = message;
  try {
    const seen = await see(message);
    tell({ say: "seen", id, seen }, [seen.flat.rgba.buffer]);
  } catch (error) {
    if (error instanceof Refusal) tell({ say: "refused", id, finding: error.finding });
    else tell({ say: "broke", id, why: error instanceof Error ? error.message : String(error) });
  }
}

scope.addEventListener("message", (event: MessageEvent<ToPhotoWorker>) => void answer(event.data));
