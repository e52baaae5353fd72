import { must } from "#base/bug.ts";
import type { Mesh } from "#mesh/mesh.ts";
import { boundaryLoops, neighbours, nextCorner } from "#mesh/neighbours.ts";
import type { Outline } from "#plane/outline.ts";
import type { SlitLay } from "./relief-lay.ts";
import type { ShellEdges } from "./shell.ts";
import { halfEdgesOn, slit } from "./slit.ts";

/** The same lay in the flat shell's frame: toe point at the origin, throat → toe along +x. `mesh` and `edges` are the unslit ones. */
export function settled(mesh: Mesh, { centre }: Pick<ShellEdges, "centre">, lay: SlitLay): SlitLay {
  const cornerOf = (v: number): number => mesh.triangles.indexOf(v);
  const { corners } = lay;
  const toe = 2 * cornerOf(centre[0]!), throat = 2 * cornerOf(centre[centre.length - 1]!);
  const [ox, oy] = [corners[toe]!, corners[toe + 1]!];
  const dx = ox - corners[throat]!, dy = oy - corners[throat + 1]!;
  const size = Math.sqrt(dx * dx + dy * dy);
  must(size > 0, "toe and throat of the flat shell coincide");
  const out = new Float64Array(corners.length);
  for (let i = 0; i < out.length; i += 2) {
    const x = corners[i]! - ox, y = corners[i + 1]! - oy;
    out[i] = (x * dx + y * dy) / size + 0;
    out[i + 1] = (y * dx - x * dy) / size + 0;
  }
  return { ...lay, corners: out };
}

/** The card's outline with the banks of its slits, counter-clockwise on the flat of a right one; it laps over itself where a slit laps. */
export function cardOutline(mesh: Mesh, paths: readonly ArrayLike<number>[], { corners }: Pick<SlitLay, "corners">): Outline {
  const cut = slit(mesh, paths).mesh;
  const loops = boundaryLoops(neighbours(cut).twin);
  must(loops.length === 1, "a slit card is one piece with one rim");
  return { xy: Float64Array.from([...loops[0]!].flatMap((h) => [corners[2 * h]!, corners[2 * h + 1]!])) };
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
