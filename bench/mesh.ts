// Times of reading, cleaning, smoothing and querying scans: median of 5, in ms. Run by `npm run bench -- mesh`.
import { existsSync, readFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { demoMeasurements } from "#last/demo.ts";
import { lastFromMeasures } from "#last/from-measures.ts";
import { lastFromScan } from "#last/from-scan.ts";
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

// The whole way from file to last on the made demo last, cut finer and roughened by 0.03 mm: 300 000 triangles are to take less than 6 s and
// 1 GB, two million to end. The longest pause between two words of progress is told, too.
const demo = lastFromMeasures(demoMeasurements, "demo", unwatched).mesh;
for (const wanted of [300_000, 2_000_000]) {
  const fine = subdivided(demo, Math.ceil(Math.sqrt((3 * wanted) / demo.triangles.length)), 0.03);
  const file = stl(fine);
  let pause = 0;
  const ms = median5(() => {
    let before = performance.now();
    const watch = (): void => {
      const now = performance.now();
      pause = Math.max(pause, now - before);
      before = now;
    };
    lastFromScan(cleanScan(readScan("fine.stl", file).mesh, watch).mesh, { name: "fine" }, watch);
  });
  row("made last: read, clean, find the last", file.length / 50 | 0, ms);
  console.log(`  longest pause ${pause.toFixed(0)} ms; at most ${(process.resourceUsage().maxRSS / 1024).toFixed(0)} MB in use so far`);
}
// Torn to single triangles, shaken and partly inside out: made anew.
{
  const soup = shakenSoup(demo);
  row("made last in loose triangles: made anew", soup.triangles.length / 3, median5(() => cleanScan(soup, unwatched)));
}

/** Every triangle cut into k² and each point moved by up to `rough` along each axis. */
function subdivided({ positions: p, triangles }: Mesh, k: number, rough: number): Mesh {
  const points: number[] = Array.from(p);
  const faces: number[] = [];
  const sides = new Map<number, number>();
  const onSide = (a: number, b: number, i: number): number => {
    if (i === 0 || i === k) return i === 0 ? a : b;
    const [low, high, j] = a < b ? [a, b, i] : [b, a, k - i];
    const key = (low * p.length) / 3 + high;
    let first = sides.get(key);
    if (first === undefined) {
      sides.set(key, (first = points.length / 3));
      for (let q = 1; q < k; q++) for (let c = 0; c < 3; c++) points.push(p[3 * low + c]! + (q / k) * (p[3 * high + c]! - p[3 * low + c]!));
    }
    return first + j - 1;
  };
  for (let t = 0; t < triangles.length; t += 3) {
    const [a, b, c] = [triangles[t]!, triangles[t + 1]!, triangles[t + 2]!];
    const at = (i: number, j: number): number => {
      if (j === 0) return onSide(a, b, i);
      if (i === 0) return onSide(a, c, j);
      if (i + j === k) return onSide(b, c, j);
      return inner.get(i * (k + 1) + j)!;
    };
    const inner = new Map<number, number>();
    for (let i = 1; i < k; i++)
      for (let j = 1; i + j < k; j++) {
        inner.set(i * (k + 1) + j, points.length / 3);
        for (let x = 0; x < 3; x++) points.push((p[3 * a + x]! * (k - i - j) + p[3 * b + x]! * i + p[3 * c + x]! * j) / k);
      }
    for (let i = 0; i < k; i++)
      for (let j = 0; i + j < k; j++) {
        faces.push(at(i, j), at(i + 1, j), at(i, j + 1));
        if (i + j + 1 < k) faces.push(at(i + 1, j), at(i + 1, j + 1), at(i, j + 1));
      }
  }
  const next = chance();
  return { positions: Float64Array.from(points, (x) => x + rough * (2 * next() - 1)), triangles: Uint32Array.from(faces) };
}

function shakenSoup({ positions: p, triangles }: Mesh): Mesh {
  const next = chance();
  const positions = Float64Array.from({ length: triangles.length * 3 }, (_, i) => p[3 * triangles[(i - (i % 3)) / 3]! + (i % 3)]! + 0.3 * (2 * next() - 1));
  const faces = Uint32Array.from(triangles, (_, i) => i);
  for (let i = 0; i < faces.length; i += 3) if (next() < 0.3) [faces[i], faces[i + 1]] = [faces[i + 1]!, faces[i]!];
  return { positions, triangles: faces };
}

/** Numbers from 0 to 1, the same every time. */
function chance(): () => number {
  let s = 12345;
  return () => (s = (Math.imul(s, 1664525) + 1013904223) >>> 0) / 2 ** 32;
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
