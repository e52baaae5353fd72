import { imageLibrary } from "./image-library.ts";
import type { Picture } from "./picture.ts";

/** A marker that was read in the picture: its number and its four corners, px, from its own upper left clockwise. */
export interface SeenMarker {
  readonly id: number;
  readonly corners: Float64Array;
}

/** The part of the image library's marker reader that is used here; its typings leave these out. */
interface Deletable {
  delete(): void;
}
interface Mat extends Deletable {
  readonly rows: number;
  readonly cols: number;
  readonly data: Uint8Array;
  readonly data32S: Int32Array;
  readonly data32F: Float32Array;
}
interface MatVector extends Deletable {
  size(): number;
  get(i: number): Mat;
}
interface DetectorParameters extends Deletable {
  adaptiveThreshWinSizeMax: number;
  adaptiveThreshWinSizeStep: number;
  minMarkerPerimeterRate: number;
  cornerRefinementMethod: number;
}
interface MarkerReader {
  readonly Mat: new (rows?: number, cols?: number, type?: number) => Mat;
  readonly MatVector: new () => MatVector;
  readonly Size: new (width: number, height: number) => object;
  readonly CV_8UC1: number;
  readonly INTER_AREA: number;
  readonly DICT_5X5_250: number;
  readonly CORNER_REFINE_SUBPIX: number;
  resize(from: Mat, to: Mat, size: object, fx: number, fy: number, how: number): void;
  getPredefinedDictionary(kind: number): Deletable;
  readonly aruco_DetectorParameters: new () => DetectorParameters;
  readonly aruco_RefineParameters: new (distance: number, errors: number, anyOrder: boolean) => Deletable;
  readonly aruco_ArucoDetector: new (dictionary: Deletable, parameters: DetectorParameters, refine: Deletable) => Deletable & {
    detectMarkers(image: Mat, corners: MatVector, ids: Mat, rejected: MatVector): void;
  };
}

/** Markers are read in a copy no longer than this; their corners are only a first guess, so nothing is lost. */
const longEnoughPx = 2200;

/** Reads all markers that can be read. Deterministic: sorted by number. A number that is seen twice is left out. */
export function findMarkers({ width, height, rgba }: Picture): SeenMarker[] {
  const cv = imageLibrary() as unknown as MarkerReader;
  const scale = Math.min(1, longEnoughPx / Math.max(width, height));
  const bin: Deletable[] = [];
  const kept = <T extends Deletable>(thing: T): T => {
    bin.push(thing);
    return thing;
  };
  try {
    const full = kept(new cv.Mat(height, width, cv.CV_8UC1));
    const grey = full.data;
    for (let i = 0, k = 0; i < grey.length; i++, k += 4) grey[i] = (54 * rgba[k]! + 183 * rgba[k + 1]! + 19 * rgba[k + 2]!) >> 8;
    const small = kept(new cv.Mat());
    if (scale < 1) cv.resize(full, small, new cv.Size(Math.round(width * scale), Math.round(height * scale)), 0, 0, cv.INTER_AREA);
    const image = scale < 1 ? small : full;
    const parameters = kept(new cv.aruco_DetectorParameters());
    // Squares of a card that fills a third of the picture are still read; the windows are odd numbers of pixels.
    parameters.minMarkerPerimeterRate = 0.012;
    parameters.adaptiveThreshWinSizeMax = 43;
    parameters.adaptiveThreshWinSizeStep = 10;
    parameters.cornerRefinementMethod = cv.CORNER_REFINE_SUBPIX;
    const detector = kept(new cv.aruco_ArucoDetector(kept(cv.getPredefinedDictionary(cv.DICT_5X5_250)), parameters, kept(new cv.aruco_RefineParameters(10, 3, true))));
    const corners = kept(new cv.MatVector());
    const rejected = kept(new cv.MatVector());
    const ids = kept(new cv.Mat());
    detector.detectMarkers(image, corners, ids, rejected);
    const sx = width / image.cols, sy = height / image.rows;
    const seen: SeenMarker[] = [];
    for (let i = 0; i < corners.size(); i++) {
      const quad = kept(corners.get(i)).data32F;
      seen.push({ id: ids.data32S[i]!, corners: Float64Array.from(quad, (v, k) => (v + 0.5) * (k % 2 === 0 ? sx : sy) - 0.5) });
    }
    const times = new Map<number, number>();
    for (const { id } of seen) times.set(id, (times.get(id) ?? 0) + 1);
    return seen.filter(({ id }) => times.get(id) === 1).sort((a, b) => a.id - b.id);
  } finally {
    for (const thing of bin.reverse()) thing.delete();
  }
}
