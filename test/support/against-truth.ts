import type { Last, Point3 } from "#last/last.ts";
import type { Mesh } from "#mesh/mesh.ts";
import { sharedJson } from "./shared.ts";
import type { Truth } from "./truth-last.ts";

/** How a file lies to the frame of truth: file = unitPerMm · (rotation · p + translationMm), as in the truth files. */
export interface FileRule {
  readonly unitPerMm: number;
  readonly rotation: readonly (readonly number[])[];
  readonly translationMm: readonly number[];
}
export const asInTruth: FileRule = { unitPerMm: 1, rotation: [[1, 0, 0], [0, 1, 0], [0, 0, 1]], translationMm: [0, 0, 0] };

/** The damaged scan beside a synthetic last: file name and how it lies. */
export const scanOf = (name: string): FileRule & { readonly file: string } =>
  (sharedJson("lasts", `${name}.truth.json`) as { scans: (FileRule & { file: string })[] }).scans[0]!;

const mul = (r: readonly (readonly number[])[], p: readonly number[]): number[] => r.map((row) => row[0]! * p[0]! + row[1]! * p[1]! + row[2]! * p[2]!);
const back = (r: readonly (readonly number[])[], p: readonly number[]): number[] => [0, 1, 2].map((c) => r[0]![c]! * p[0]! + r[1]![c]! * p[1]! + r[2]![c]! * p[2]!);

/** A mesh laid into a file by a rule. A `mirrored` one is reflected in y first and stays outward. */
export function laid(mesh: Mesh, rule: FileRule, mirrored = false): Mesh {
  const positions = new Float64Array(mesh.positions.length);
  for (let i = 0; i < positions.length; i += 3) {
    const p = [mesh.positions[i]!, mesh.positions[i + 1]! * (mirrored ? -1 : 1), mesh.positions[i + 2]!];
    mul(rule.rotation, p).forEach((v, k) => (positions[i + k] = rule.unitPerMm * (v + rule.translationMm[k]!)));
  }
  const triangles = mesh.triangles.slice();
  if (mirrored) for (let i = 0; i < triangles.length; i += 3) [triangles[i], triangles[i + 1]] = [triangles[i + 1]!, triangles[i]!];
  return { positions, triangles };
}

/** Takes a point of a found last through its placement into the file and by the file's rule back into the frame of truth. */
export function intoTruth({ placement: { unitPerMm, rotation: r, translationMm: t } }: Last, rule: FileRule, p: ArrayLike<number>): Point3 {
  const q = [0, 1, 2].map((k) => unitPerMm * (r[3 * k]! * p[0]! + r[3 * k + 1]! * p[1]! + r[3 * k + 2]! * p[2]! + t[k]!));
  const [x, y, z] = back(rule.rotation, q.map((v, k) => v / rule.unitPerMm - rule.translationMm[k]!));
  return [x!, y!, z!];
}

/** Distances of every found feather point from the true line: root mean square and greatest, mm. */
export function featherError(last: Last, rule: FileRule, truth: readonly (readonly number[])[]): { rms: number; max: number } {
  const { points } = last.feather;
  let [sum, max] = [0, 0];
  for (let i = 0; i < points.length; i += 3) {
    const p = intoTruth(last, rule, points.subarray(i, i + 3));
    let best = Infinity;
    truth.forEach((a, k) => (best = Math.min(best, squaredToSegment(p, a, truth[(k + 1) % truth.length]!))));
    sum += best;
    max = Math.max(max, Math.sqrt(best));
  }
  return { rms: Math.sqrt((3 * sum) / points.length), max };
}

function squaredToSegment(p: Point3, a: readonly number[], b: readonly number[]): number {
  const d = [0, 1, 2].map((k) => b[k]! - a[k]!);
  const e = [0, 1, 2].map((k) => p[k]! - a[k]!);
  const t = Math.max(0, Math.min(1, (d[0]! * e[0]! + d[1]! * e[1]! + d[2]! * e[2]!) / (d[0]! ** 2 + d[1]! ** 2 + d[2]! ** 2)));
  return (e[0]! - t * d[0]!) ** 2 + (e[1]! - t * d[1]!) ** 2 + (e[2]! - t * d[2]!) ** 2;
}

export const lengthsMm = ["stickLength", "lastLength", "ballWidth", "seatWidth", "heelHeight", "toeSpring"] as const;
export const girthsMm = ["jointGirth", "waistGirth", "instepGirth", "heelGirth"] as const;

/** The farthest that any of the named measures lies from truth, mm. */
export function worst(last: Last, truth: Truth, names: readonly (keyof Truth["values"] & keyof Last["measures"])[]): number {
  return Math.max(...names.map((k) => Math.abs(last.measures[k] - truth.values[k])));
}

/** Proper rotations, spread over all ways a scan can lie; seeded. */
export function* rotations(seed: number): Generator<number[][]> {
  let s = seed;
  const next = (): number => ((s = (s * 16807) % 2147483647) / 2147483647 - 0.5);
  for (;;) {
    const q = [next(), next(), next(), next()];
    const n = Math.hypot(...q);
    const [w, x, y, z] = q.map((v) => v / n) as [number, number, number, number];
    yield [
      [1 - 2 * (y * y + z * z), 2 * (x * y - w * z), 2 * (x * z + w * y)],
      [2 * (x * y + w * z), 1 - 2 * (x * x + z * z), 2 * (y * z - w * x)],
      [2 * (x * z - w * y), 2 * (y * z + w * x), 1 - 2 * (x * x + y * y)],
    ];
  }
}

