// What is measured on a card laid flat with its nicks.
import { must } from "#base/bug.ts";
import type { Point3 } from "#last/last.ts";
import type { Half } from "#lines/feather.ts";
import type { Mesh } from "#mesh/mesh.ts";
import { nextCorner } from "#mesh/neighbours.ts";
import { rowLengths, type SlitLay } from "./relief-lay.ts";
import type { LaidShell } from "./relief-sheet.ts";
import { halfEdgesOn } from "./slit.ts";

export const featherRow = ({ shell: { edges } }: Pick<LaidShell, "shell">, half: Half): Uint32Array => (half === "medial" ? edges.featherMedial : edges.featherLateral);

/** By how much a half's feather edge, openings left out, is longer on the flat than where it lies, mm. */
export function featherOver(laid: Pick<LaidShell, "shell">, half: Half, lay: SlitLay): number {
  const { flatMm, surfaceMm } = rowLengths(laid.shell.mesh, lay, featherRow(laid, half));
  return flatMm - surfaceMm;
}

/** Gap between the heel ends at the topline, mm; below 0 where they have swung past each other, so that the card laps there. */
export function heelGapOf({ shell: { mesh, edges } }: Pick<LaidShell, "shell">, { corners }: Pick<SlitLay, "corners">): number {
  const at = (v: number): readonly [number, number] => {
    const h = mesh.triangles.indexOf(v);
    return [corners[2 * h]!, corners[2 * h + 1]!];
  };
  const from = ([px, py]: readonly [number, number], [qx, qy]: readonly [number, number]): readonly [number, number] => [qx - px, qy - py];
  const { backMedial, backLateral, toplineMedial, centre } = edges;
  const throat = at(centre[centre.length - 1]!);
  const [cx, cy] = from(throat, at(centre[0]!));
  const across = ([dx, dy]: readonly [number, number]): number => cx * dy - cy * dx;
  const gap = from(at(backLateral[backLateral.length - 1]!), at(backMedial[backMedial.length - 1]!));
  // Half-way along, the inner topline lies on its own side of the centre whatever the ends do.
  const own = across(from(throat, at(toplineMedial[toplineMedial.length >> 1]!)));
  return Math.sqrt(gap[0] ** 2 + gap[1] ** 2) * (across(gap) * own < 0 ? -1 : 1);
}

/** A feather edge's excess is read over so many of its steps (on the fine sheet some 15 mm) to find where it is greatest. */
const overSteps = 6;

/** Where a half's feather edge, openings left out, is longest on the flat for its length where it lies: there most is gathered. */
export function mostOver({ shell: { mesh, edges } }: Pick<LaidShell, "shell">, half: Half, lay: SlitLay): Point3 {
  const row = featherRow({ shell: { mesh, edges } }, half);
  let best = 0, most = -Infinity;
  for (let k = 0; k + overSteps < row.length; k++) {
    const { flatMm, surfaceMm } = rowLengths(mesh, lay, row.subarray(k, k + overSteps + 1));
    if (flatMm / surfaceMm <= most) continue;
    most = flatMm / surfaceMm;
    best = row[k + overSteps / 2]!;
  }
  return [mesh.positions[3 * best]!, mesh.positions[3 * best + 1]!, mesh.positions[3 * best + 2]!];
}

/**
 * How far a slit opens on the flat at its mouth, mm, measured along the feather edge; below 0 its banks lap. `feather` is the row of
 * vertices from seat to toe, `mouth` the vertex where the slit begins.
 */
export function openingAt(mesh: Mesh, feather: Uint32Array, mouth: number, { corners }: Pick<SlitLay, "corners">): number {
  const k = feather.indexOf(mouth);
  must(k > 0 && k + 1 < feather.length, "a slit begins inside the feather edge");
  const before = step(mesh, corners, feather[k - 1]!, mouth), after = step(mesh, corners, mouth, feather[k + 1]!);
  // Along the feather edge at the mouth: the mean of the directions either side of it.
  const tx = before.dx / before.size + after.dx / after.size, ty = before.dy / before.size + after.dy / after.size;
  const t = Math.sqrt(tx * tx + ty * ty);
  const gx = after.x - before.x - before.dx, gy = after.y - before.y - before.dy;
  const size = Math.sqrt(gx * gx + gy * gy);
  return gx * tx + gy * ty < 0 && t > 0 ? -size : size;
}

/** One step of the rim on the flat, from its first vertex. */
function step({ positions, triangles }: Mesh, corners: Float64Array, from: number, to: number) {
  const h = halfEdgesOn({ positions, triangles }, [from, to])[0]!;
  const [a, b] = triangles[h] === from ? [h, nextCorner(h)] : [nextCorner(h), h];
  const x = corners[2 * a]!, y = corners[2 * a + 1]!;
  const dx = corners[2 * b]! - x, dy = corners[2 * b + 1]! - y;
  return { x, y, dx, dy, size: Math.sqrt(dx * dx + dy * dy) };
}
