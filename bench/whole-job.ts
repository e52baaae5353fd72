// The whole job from process start to files on disk: `lastwise make` on a scan, as a maker runs it. Medians of 5.
// Aim on one thread of a 2-core machine: under 8 s and under 600 MB for a scan of 60 000 triangles; refusals within 5 s.
import { spawnSync } from "node:child_process";
import { existsSync, mkdtempSync, rmSync, statSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { unwatched } from "#base/watch.ts";
import { demoMeasurements } from "#last/demo.ts";
import { lastFromMeasures } from "#last/from-measures.ts";
import { binaryStl, box, torus } from "../test/support/solids.ts";

const runs = 5;
const folder = mkdtempSync(join(tmpdir(), "lastwise-bench-"));
const median = (values: readonly number[]): number => [...values].sort((a, b) => a - b)[Math.floor(values.length / 2)]!;
/** Makes the child tell its greatest memory (KB) and its processor time (µs) when it ends. */
const tell = 'process.on("exit",()=>{const r=process.resourceUsage();process.stderr.write(`\\npeak ${r.maxRSS} cpu ${r.userCPUTime+r.systemCPUTime}\\n`)})';
const tellUse = `--import=data:text/javascript,${encodeURIComponent(tell)}`;

function time(name: string, args: readonly string[], wanted: readonly number[]): void {
  const times: number[] = [];
  const peaks: number[] = [];
  const worked: number[] = [];
  for (let i = 0; i < runs; i++) {
    const start = performance.now();
    const done = spawnSync(process.execPath, [tellUse, "bin/lastwise.mjs", ...args], { encoding: "utf8" });
    times.push(performance.now() - start);
    const use = /peak (\d+) cpu (\d+)/.exec(done.stderr);
    peaks.push(Number(use?.[1]) / 1024);
    worked.push(Number(use?.[2]) / 1e6);
    if (!wanted.includes(done.status ?? -1)) {
      console.error(done.stderr);
      throw new Error(`${name} ended with ${done.status}`);
    }
  }
  const spread = `${(Math.min(...times) / 1000).toFixed(2)} to ${(Math.max(...times) / 1000).toFixed(2)} s`;
  console.log(`${name.padEnd(44)} ${(median(times) / 1000).toFixed(2).padStart(6)} s (${spread}), processor ${median(worked).toFixed(2).padStart(5)} s, ${median(peaks).toFixed(0).padStart(5)} MB`);
}

const put = (name: string, bytes: Uint8Array): string => {
  writeFileSync(join(folder, name), bytes);
  return join(folder, name);
};

try {
  const out = join(folder, "out");
  const { mesh } = lastFromMeasures(demoMeasurements, "example", unwatched);
  const stl = binaryStl(mesh);
  // The first run builds; it is not counted.
  spawnSync(process.execPath, ["bin/lastwise.mjs", "--version"]);
  time("start alone (--version)", ["--version"], [0]);
  time("make, example pair", ["make", "--example", "--out", out], [0, 1]);
  time(`make, example last as a scan (${mesh.triangles.length / 3} triangles)`, ["make", put("example.stl", stl), "--out", out], [0, 1]);
  for (const name of ["last_eu38_round_heel20.stl", "last_eu37_almond_scan.stl"]) {
    const path = join("..", "shared", "data", "lasts", name);
    if (existsSync(path)) time(`make, ${name} (${(statSync(path).size / 1e6).toFixed(1)} MB)`, ["make", path, "--out", out], [0, 1]);
    else console.log(`skipped: ${name} is not beside the project`);
  }
  time("refusal: torus", ["measure", put("torus.stl", binaryStl(torus(85, 40)))], [2]);
  time("refusal: cube", ["measure", put("cube.stl", binaryStl(box(100, 100, 100, 100)))], [2]);
  time("refusal: header promises 2 billion triangles", ["measure", put("huge.stl", binaryStl(mesh, { count: 0x7fffffff }))], [2]);
} finally {
  rmSync(folder, { recursive: true, force: true });
}
