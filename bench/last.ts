// How long a cleaned scan takes to become a last: median of 5, and its parts. With ../shared/data the clean and the rough 60k-triangle
// last; without it the made demo last. Ratio: against reading and cleaning the same scan in the same run.
import { performance } from "node:perf_hooks";
import { unwatched } from "#base/watch.ts";
import { demoMeasurements } from "#last/demo.ts";
import { lastFromMeasures } from "#last/from-measures.ts";
import { lastFromScan } from "#last/from-scan.ts";
import { cleanScan } from "#mesh/clean.ts";
import { triangleCount, type Mesh } from "#mesh/mesh.ts";
import { readScan } from "#mesh/read.ts";
import { hasShared, sharedBytes } from "../test/support/shared.ts";

const median = (v: number[]): number => v.sort((a, b) => a - b)[v.length >> 1]!;

function timed(run: () => void): number {
  run();
  return median(
    Array.from({ length: 5 }, () => {
      const start = performance.now();
      run();
      return performance.now() - start;
    }),
  );
}

function parts(mesh: Mesh): string {
  const spent = new Map<string, number>();
  let [since, at] = [performance.now(), "start"];
  const note = (stage: string): void => {
    const now = performance.now();
    spent.set(at, (spent.get(at) ?? 0) + now - since);
    [since, at] = [now, stage];
  };
  lastFromScan(mesh, { name: "bench" }, note);
  note("end");
  return [...spent].filter(([, ms]) => ms >= 1).map(([stage, ms]) => `${stage} ${ms.toFixed(0)}`).join(", ");
}

function report(name: string, mesh: Mesh, cleanMs?: number): void {
  const ms = timed(() => lastFromScan(mesh, { name: "bench" }, unwatched));
  const ratio = cleanMs === undefined ? "" : `; reading and cleaning ${cleanMs.toFixed(0)} ms, ratio ${(ms / cleanMs).toFixed(2)}`;
  console.log(`${name}: ${triangleCount(mesh)} triangles, last from scan ${ms.toFixed(0)} ms${ratio}\n  parts (ms): ${parts(mesh)}`);
}

if (hasShared) {
  for (const file of ["last_eu37_almond.stl", "last_eu36_round_scan.ply", "last_eu37_almond_scan.stl"]) {
    const bytes = sharedBytes("lasts", file);
    const clean = (): Mesh => cleanScan(readScan(file, bytes).mesh, unwatched).mesh;
    report(file, clean(), timed(clean));
  }
} else {
  report("made demo last", lastFromMeasures(demoMeasurements, "demo", unwatched).mesh);
}
