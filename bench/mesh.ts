// Times of reading, cleaning, smoothing and querying scans: median of 5, in ms. Run by `npm run bench -- mesh`.
import { existsSync, readFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { cleanScan } from "#mesh/clean.ts";
import { ClosestPoint } from "#mesh/closest.ts";
import type { Mesh } from "#mesh/mesh.ts";
import { readScan } from "#mesh/read.ts";
import { remesh } from "#mesh/remesh.ts";
import { Sectioner } from "#mesh/section.ts";
import { smoothScan } from "#mesh/smooth.ts";
import { unwatched } from "#base/watch.ts";

function median5(work: () => unknown): number {
  const times = Array.from({ length: 5 }, () => {
    const start = performance.now();
    work();
    return performance.now() - start;
  });
  return times.sort((a, b) => a - b)[2]!;
}

const row = (what: string, triangles: number, ms: number): void => console.log(`${what.padEnd(44)}${String(triangles).padStart(8)} triangles ${ms.toFixed(0).padStart(6)} ms`);

/** Ring of n by n/2 quads with radii like a last: a body of any size without outside data. */
function ring(n: number): Mesh {
  const m = n / 2;
  const positions = new Float64Array(n * m * 3);
  const triangles: number[] = [];
  for (let i = 0; i < n; i++)
    for (let j = 0; j < m; j++) {
      const [u, v] = [(2 * Math.PI * i) / n, (2 * Math.PI * j) / m];
      positions.set([(90 + 35 * Math.cos(v)) * Math.cos(u), (90 + 35 * Math.cos(v)) * Math.sin(u), 35 * Math.sin(v)], 3 * (i * m + j));
      const [a, b, c, d] = [i * m + j, ((i + 1) % n) * m + j, ((i + 1) % n) * m + ((j + 1) % m), i * m + ((j + 1) % m)];
      triangles.push(a, b, c, a, c, d);
    }
  return { positions, triangles: Uint32Array.from(triangles) };
}

function stl({ positions: p, triangles }: Mesh): Uint8Array {
  const bytes = new Uint8Array(84 + (50 * triangles.length) / 3);
  const view = new DataView(bytes.buffer);
  view.setUint32(80, triangles.length / 3, true);
  for (let i = 0; i < triangles.length; i++) for (let k = 0; k < 3; k++) view.setFloat32(84 + 50 * Math.floor(i / 3) + 12 + 12 * (i % 3) + 4 * k, p[3 * triangles[i]! + k]!, true);
  return bytes;
}

for (const n of [350, 776]) {
  const file = stl(ring(n));
  const count = (file.length - 84) / 50;
  row("made ring: read binary STL", count, median5(() => readScan("ring.stl", file)));
  const raw = readScan("ring.stl", file).mesh;
  row("made ring: clean", count, median5(() => cleanScan(raw, unwatched)));
}

const lasts = fileURLToPath(new URL("../../shared/data/lasts/", import.meta.url));
if (!existsSync(lasts)) console.log("skipped: the lasts, because ../shared/data is absent");
else
  for (const name of ["last_eu36_round_scan.ply", "last_eu37_almond_scan.stl", "last_eu38_round_heel20_scan.obj", "last_eu39_square_scan.ply", "last_eu41_pointed_scan.glb", "last_eu38_round_heel20.stl"]) {
    const bytes = new Uint8Array(readFileSync(lasts + name));
    const raw = readScan(name, bytes).mesh;
    const count = raw.triangles.length / 3;
    row(`${name}: read`, count, median5(() => readScan(name, bytes)));
    row(`${name}: clean`, count, median5(() => cleanScan(raw, unwatched)));
    const { mesh } = cleanScan(raw, unwatched);
    row(`${name}: smooth`, count, median5(() => smoothScan(mesh)));
    row(`${name}: nearest-point tree`, count, median5(() => new ClosestPoint(mesh)));
    const cutter = new Sectioner(mesh);
    const p = mesh.positions;
    row(`${name}: 300 cuts`, count, median5(() => {
      for (let i = 0; i < 300; i++) cutter.cut([p[3 * i * 20]!, p[3 * i * 20 + 1]!, p[3 * i * 20 + 2]!], [1, 0.3, 0.1]);
    }));
    const edge = Math.sqrt(meanArea(mesh) * 2.3) * 1.5;
    row(`${name}: remesh to 1.5 × its edge`, count, median5(() => remesh(mesh, edge, unwatched)));
  }

function meanArea({ positions: p, triangles }: Mesh): number {
  let sum = 0;
  for (let i = 0; i < triangles.length; i += 3) {
    const at = (k: number): readonly [number, number, number] => [p[3 * triangles[i + k]!]!, p[3 * triangles[i + k]! + 1]!, p[3 * triangles[i + k]! + 2]!];
    const [a, b, c] = [at(0), at(1), at(2)];
    const [u, v] = [[b[0] - a[0], b[1] - a[1], b[2] - a[2]] as const, [c[0] - a[0], c[1] - a[1], c[2] - a[2]] as const];
    sum += Math.hypot(u[1] * v[2] - u[2] * v[1], u[2] * v[0] - u[0] * v[2], u[0] * v[1] - u[1] * v[0]) / 2;
  }
  return (3 * sum) / triangles.length;
}
