import type { Last, Point3 } from "#last/last.ts";
import { apart as signed } from "../state/numbers.ts";
import { placeOf } from "../state/places.ts";
import { liftedOff } from "./drawn-lines.ts";
import { mapColour } from "./map-scale.ts";
import { lay, levelLines, levelsFor, type LevelLine } from "./strain.ts";

/** How far another last stands off this one, ready to be shown on it. */
export interface ApartMap {
  /** End of the scale, mm. */
  readonly end: number;
  /** Colour of each vertex, r g b 0 … 255. */
  readonly colours: Uint8Array;
  readonly lines: readonly Float64Array[];
  readonly numbers: readonly { readonly key: string; readonly text: string; readonly at: readonly number[] }[];
  readonly worst: { readonly mm: number; readonly at: Point3; readonly where: string; readonly text: string };
}

/** Numbers nearer to each other than this on the last would cover one another, mm. */
const apartMm = 22;

/**
 * @param apart at each vertex of the last's mesh, mm: plus where the other one stands out farther, minus where it stays inside
 */
export function apartMap(last: Last, apart: Float64Array): ApartMap {
  const { positions, triangles } = last.mesh;
  const end = endOf(apart);
  const shown = calmed(triangles, apart);
  const colours = new Uint8Array(apart.length * 3);
  shown.forEach((d, v) => colours.set(mapColour(d / end), 3 * v));
  const lifted = liftedOff(last.mesh);
  const found = levelLines(triangles, shown, levelsFor(end)).filter((l) => l.points.length > 12);
  let worst = 0;
  for (let v = 1; v < apart.length; v++) if (Math.abs(apart[v]!) > Math.abs(apart[worst]!)) worst = v;
  const at: Point3 = [positions[3 * worst]!, positions[3 * worst + 1]!, positions[3 * worst + 2]!];
  const mm = apart[worst] ?? 0;
  return { end, colours, lines: found.map((l) => lay(l.points, lifted, 3)), numbers: numbersFor(found, lifted), worst: { mm, at, where: placeOf(last, at), text: `most: ${signed(mm)}` } };
}

/** Each value so often halfway to the mean of its neighbours: grain of a scan and jumps at an edge go, what is a centimetre wide stays. */
const calmings = 6;

/**
 * Where two lasts differ much, as at the toe, the nearest place jumps from one vertex to the next, and level lines would run
 * ragged. Only for the eye: figures and the worst place are of the values as they are.
 */
export function calmed(triangles: Uint32Array, values: Float64Array): Float64Array {
  let now = Float64Array.from(values);
  for (let round = 0; round < calmings; round++) {
    const sum = new Float64Array(now.length), count = new Float64Array(now.length);
    for (let t = 0; t < triangles.length; t += 3) {
      const a = triangles[t]!, b = triangles[t + 1]!, c = triangles[t + 2]!;
      const all = now[a]! + now[b]! + now[c]!;
      for (const v of [a, b, c]) {
        sum[v]! += (all - now[v]!) / 2;
        count[v]!++;
      }
    }
    now = now.map((value, v) => (count[v]! > 0 ? (value + sum[v]! / count[v]!) / 2 : value));
  }
  return now;
}

/** End of the scale, a round length that takes in nearly all: 0.5, 1, 2, 4 or 8 mm. */
export function endOf(apart: Float64Array): number {
  const sorted = Float64Array.from(apart, Math.abs).sort();
  const most = sorted[Math.floor(sorted.length * 0.99)] ?? 0;
  return [0.5, 1, 2, 4].find((end) => most <= end) ?? 8;
}

/** One number on each of the longer lines, at the place nearest to its middle that is free. */
function numbersFor(lines: readonly LevelLine[], positions: Float64Array): ApartMap["numbers"] {
  const out: ApartMap["numbers"][number][] = [];
  for (const l of lines.filter((line) => line.points.length > 24).sort((a, b) => b.points.length - a.points.length)) {
    const n = l.points.length;
    for (const share of [0.5, 0.25, 0.75, 0.05, 0.95]) {
      const at = [...lay([l.points[Math.floor((n - 1) * share)]!], positions, 3)];
      if (out.some((o) => Math.hypot(o.at[0]! - at[0]!, o.at[1]! - at[1]!, o.at[2]! - at[2]!) < apartMm)) continue;
      out.push({ key: `${out.length}`, text: signed(l.level), at });
      break;
    }
  }
  return out;
}
