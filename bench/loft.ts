// How long a last from measurements takes: median of 5 on a warm engine, its parts, and the ratio to finding the same last again in
// its own mesh as if it were a scan (the other way to a last). Run by `npm run bench -- loft`.
import { performance } from "node:perf_hooks";
import { unwatched } from "#base/watch.ts";
import { demoMeasurements } from "#last/demo.ts";
import { lastFromMeasures } from "#last/from-measures.ts";
import { lastFromScan } from "#last/from-scan.ts";
import { meshLoft } from "#last/loft-mesh.ts";
import { plannedNumbers } from "#last/loft-plan.ts";
import { LoftShape } from "#last/loft-shape.ts";
import { planSilhouette, sideSilhouette } from "#last/loft-silhouette.ts";
import { triangleCount } from "#mesh/mesh.ts";

function median5(work: () => unknown): number {
  work();
  const times = Array.from({ length: 5 }, () => {
    const start = performance.now();
    work();
    return performance.now() - start;
  });
  return times.sort((a, b) => a - b)[2]!;
}

const start = performance.now();
const made = lastFromMeasures(demoMeasurements, "bench", unwatched);
const first = performance.now() - start;
let forms = 0;
const whole = median5(() => {
  forms = 0;
  lastFromMeasures(demoMeasurements, "bench", () => forms++);
});
const plan = plannedNumbers(demoMeasurements);
const row = (what: string, ms: number, more = ""): void => console.log(`${what.padEnd(44)}${ms.toFixed(0).padStart(6)} ms ${more}`);

row("last from measurements, first call", first, `${triangleCount(made.mesh)} triangles`);
row("last from measurements", whole, `${forms - 1} forms tried`);
row("  plan: length, widths, tread", median5(() => plannedNumbers(demoMeasurements)));
row("  mesh of 4 mm, for the girths", median5(() => meshLoft(new LoftShape(plan), 4)));
row("  mesh of 2 mm, handed out", median5(() => meshLoft(new LoftShape(plan), 2)));
const outlines = { bottom: planSilhouette(new LoftShape(plan)), side: sideSilhouette(new LoftShape(plan)), pencilMm: 0 };
row("  with both outlines", median5(() => lastFromMeasures({ ...demoMeasurements, toe: "almond" }, "bench", unwatched, outlines)));
row("  with the outline of the bottom", median5(() => lastFromMeasures({ ...demoMeasurements, toe: "almond" }, "bench", unwatched, { bottom: outlines.bottom, pencilMm: 0 })));
const found = median5(() => lastFromScan(made.mesh, { name: "bench" }, unwatched));
row("the same last found in its mesh as a scan", found, `ratio ${(whole / found).toFixed(2)}`);
