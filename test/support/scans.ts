// What several files of tests look at and none changes, made once in a worker: cleaned scans of the outside data, the lasts found in
// them, and the example's last. Whoever tests the making itself makes it anew.
import { unwatched } from "#base/watch.ts";
import { demoMeasurements } from "#last/demo.ts";
import { lastFromMeasures } from "#last/from-measures.ts";
import { lastFromScan } from "#last/from-scan.ts";
import type { Last } from "#last/last.ts";
import { cleanScan } from "#mesh/clean.ts";
import type { Mesh } from "#mesh/mesh.ts";
import { readScan } from "#mesh/read.ts";
import { sharedBytes } from "./shared.ts";

const meshes = new Map<string, Mesh>();
const lasts = new Map<string, Last>();
let example: Last | undefined;

function once<T>(kept: Map<string, T>, key: string, make: () => T): T {
  let value = kept.get(key);
  if (value === undefined) kept.set(key, (value = make()));
  return value;
}

/** A scan of the outside data, cleaned; in the file's unit and pose. */
export const cleanedScan = (folder: string, file: string): Mesh => once(meshes, `${folder}/${file}`, () => cleanScan(readScan(file, sharedBytes(folder, file)).mesh, unwatched).mesh);

/** The last found in a cleaned scan of ../shared/data/lasts, with nothing said by the maker. */
export const foundLast = (file: string): Last => once(lasts, file, () => lastFromScan(cleanedScan("lasts", file), { name: file }, unwatched));

/** The last of the example's invented numbers. */
export const exampleLast = (): Last => (example ??= lastFromMeasures(demoMeasurements, "example", unwatched));
