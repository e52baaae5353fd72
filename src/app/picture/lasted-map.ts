import type { Lasted } from "#lasting/lasted.ts";
import type { Point3 } from "#last/last.ts";
import type { Mesh } from "#mesh/mesh.ts";
import { vertexMeans } from "#shell/strain.ts";
import { percent, say, mm } from "../state/numbers.ts";
import { liftedOff } from "./drawn-lines.ts";
import { mapColour } from "./map-scale.ts";
import { numbersOn, type NumberOnLast } from "./numbers-on-last.ts";
import { lay, levelLines, levelsFor, scaleEnd, scaleEndMm } from "./strain.ts";

/** What the colours on the lasted upper show. */
export const lastedMaps = ["most", "least", "along", "across", "stands off"] as const;
export type LastedMapOf = (typeof lastedMaps)[number];

/** What one lasted upper shows, ready to be laid on the last. */
export interface LastedMap {
  readonly of: LastedMapOf;
  /** End of the scale: a share, or mm for what stands off. */
  readonly end: number;
  readonly mesh: Mesh;
  /** Colour of each vertex, r g b 0 … 255. */
  readonly colours: Uint8Array;
  readonly lines: readonly Float64Array[];
  readonly numbers: readonly NumberOnLast[];
  readonly worst: { readonly value: number; readonly at: Point3 };
}

/** Numbers nearer to each other than this would cover one another, mm. */
const apartMm = 18;

export function lastedMap(lasted: Lasted, of: LastedMapOf): LastedMap {
  const { triangles, positions } = lasted;
  const mesh: Mesh = { triangles, positions };
  const values = of === "stands off" ? lasted.standOff : vertexMeans(mesh, lasted[of].map((s) => s - 1));
  const end = of === "stands off" ? scaleEndMm(values) : scaleEnd(values);
  const colours = new Uint8Array(3 * values.length);
  values.forEach((value, v) => colours.set(mapColour(value / end), 3 * v));
  const lifted = liftedOff(mesh);
  const lines = levelLines(triangles, values, levelsFor(end)).filter((l) => l.points.length > 8);
  const worst = worstOf(values, of);
  return {
    of, end, mesh, colours,
    lines: lines.map((l) => lay(l.points, lifted, 3)),
    numbers: numbersOn(lines, lifted, apartMm, (level) => lastedNumber(of, level)),
    worst: { value: values[worst] ?? 0, at: [positions[3 * worst]!, positions[3 * worst + 1]!, positions[3 * worst + 2]!] },
  };
}

/** Where it is farthest from nothing: for gathering the least, along and across whichever way is more. */
function worstOf(values: Float64Array, of: LastedMapOf): number {
  const worse = (a: number, b: number): boolean => (of === "least" ? a < b : of === "along" || of === "across" ? Math.abs(a) > Math.abs(b) : a > b);
  return values.reduce((best, value, v) => (worse(value, values[best]!) ? v : best), 0);
}

/** A value as it is written in picture and legend: percent with its sign, or plain mm. */
export function lastedNumber(of: LastedMapOf, value: number, decimals = 1): string {
  return of === "stands off" ? say(value, Math.max(2, decimals)) : `${value > 0 ? "+" : ""}${say(100 * value, decimals)}`;
}

/** The worst value with its unit. */
export const lastedWorst = ({ of, worst }: LastedMap): string => (of === "stands off" ? mm(worst.value) : percent(Math.abs(worst.value)));

/** Edges that belong to one triangle alone, as the numbers of their ends: the outline of the sheet, and both banks of its seams. */
export function rimOf({ triangles, positions }: Mesh): readonly (readonly [number, number])[] {
  const count = new Map<number, readonly [number, number]>();
  const n = positions.length / 3;
  for (let t = 0; t < triangles.length; t += 3)
    for (let k = 0; k < 3; k++) {
      const [a, b] = [triangles[t + k]!, triangles[t + ((k + 1) % 3)]!];
      const key = Math.min(a, b) * n + Math.max(a, b);
      if (!count.delete(key)) count.set(key, [a, b]);
    }
  return [...count.values()];
}

/** The same as x y z … of each edge, lifted a hair. */
export function outlineOf(mesh: Mesh, rim = rimOf(mesh)): readonly Float64Array[] {
  const lifted = liftedOff(mesh);
  return rim.map(([a, b]) => Float64Array.of(...lifted.subarray(3 * a, 3 * a + 3), ...lifted.subarray(3 * b, 3 * b + 3)));
}
