// Writes the example last as STL with its landmarks and measures, for the outside checks: `tsx crosscheck/export-last.ts FOLDER`.
import { writeFileSync } from "node:fs";
import { join } from "node:path";
import { unwatched } from "#base/watch.ts";
import { demoMeasurements } from "#last/demo.ts";
import { lastFromMeasures } from "#last/from-measures.ts";

const last = lastFromMeasures(demoMeasurements, "example", unwatched);
const { positions, triangles } = last.mesh;
const stl = new DataView(new ArrayBuffer(84 + 50 * (triangles.length / 3)));
stl.setUint32(80, triangles.length / 3, true);
for (let i = 0; i < triangles.length; i++) {
  const at = 84 + 50 * Math.floor(i / 3) + 12 + 12 * (i % 3);
  for (let k = 0; k < 3; k++) stl.setFloat32(at + 4 * k, positions[3 * triangles[i]! + k]!, true);
}
const folder = process.argv[2]!;
writeFileSync(join(folder, "last.stl"), new Uint8Array(stl.buffer));
writeFileSync(
  join(folder, "last.json"),
  JSON.stringify({ ...last.landmarks, measures: last.measures, feather: [...last.feather.points], centreRidge: { points: [...last.centreRidge.points], arc: [...last.centreRidge.arc] } }),
);
