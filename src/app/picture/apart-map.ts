import type { Last, Point3 } from "#last/last.ts";
import { apart as signed } from "../state/numbers.ts";
import { placeOf } from "../state/places.ts";
import { liftedOff } from "./drawn-lines.ts";
import { mapColour } from "./map-scale.ts";
import { numbersOn, type NumberOnLast } from "./numbers-on-last.ts";
import { lay, levelLines, levelsFor } from "./strain.ts";

/** How far another last stands off this one, ready to be shown on it. */
export interface ApartMap {
  /** End of the scale, mm. */
  readonly end: number;
  /** Colour of each vertex, r g b 0 … 255. */
  readonly colours: Uint8Array;
  readonly lines: readonly Float64Array[];
  readonly numbers: readonly NumberOnLast[];
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
  const colours = new Uint8Array(apart.length * 3);
  apart.forEach((d, v) => colours.set(mapColour(d / end), 3 * v));
  const lifted = liftedOff(last.mesh);
  const found = levelLines(triangles, apart, levelsFor(end)).filter((l) => l.points.length > 12);
  let worst = 0;
  for (let v = 1; v < apart.length; v++) if (Math.abs(apart[v]!) > Math.abs(apart[worst]!)) worst = v;
  const at: Point3 = [positions[3 * worst]!, positions[3 * worst + 1]!, positions[3 * worst + 2]!];
  const mm = apart[worst] ?? 0;
  return { end, colours, lines: found.map((l) => faired(lay(l.points, lifted, 3))), numbers: numbersOn(found, lifted, apartMm, signed), worst: { mm, at, where: placeOf(last, at), text: `most: ${signed(mm)}` } };
}

/** So often each point of a line goes halfway to the middle between its neighbours. */
const fairings = 8;

/**
 * Where two lasts differ much, as at the toe, the nearest place jumps from one vertex to the next, and a level line runs ragged.
 * Only for the eye: within a few millimetres it is made fair; its ends stay, and one that closes stays closed.
 *
 * @param line x y z of each point
 */
export function faired(line: Float64Array): Float64Array {
  const last = line.length - 3;
  const closes = last >= 9 && [0, 1, 2].every((k) => line[k] === line[last + k]);
  let now = line;
  for (let round = 0; round < fairings; round++) {
    const next = now.slice();
    for (let i = 3; i < last; i += 3) for (let k = i; k < i + 3; k++) next[k] = (now[k - 3]! + 2 * now[k]! + now[k + 3]!) / 4;
    if (closes) for (let k = 0; k < 3; k++) next[k] = next[last + k] = (now[last - 3 + k]! + 2 * now[k]! + now[3 + k]!) / 4;
    now = next;
  }
  return now;
}

/** End of the scale, a round length that takes in nearly all: 1, 2, 4 or 8 mm; on a finer one the grain of any scan would look like a difference. */
export function endOf(apart: Float64Array): number {
  const sorted = Float64Array.from(apart, Math.abs).sort();
  const most = sorted[Math.floor(sorted.length * 0.99)] ?? 0;
  return [1, 2, 4].find((end) => most <= end) ?? 8;
}
