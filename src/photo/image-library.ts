import type { OpenCV } from "@opencvjs/web";
import { must } from "#base/bug.ts";

export type ImageLibrary = typeof OpenCV;

let loading: Promise<void> | undefined;
let library: ImageLibrary | undefined;

/**
 * Loads the image library (a large WebAssembly module, brought in only when the first picture comes). Await it once before
 * `tracePhoto`; later calls cost nothing.
 */
export function readyForPhotos(): Promise<void> {
  loading ??= import("@opencvjs/web").then(async ({ loadOpenCV }) => void (library = await loadOpenCV()));
  return loading;
}

/** The loaded library. */
export function imageLibrary(): ImageLibrary {
  must(library !== undefined, "readyForPhotos() must be awaited before a picture is traced");
  return library;
}
