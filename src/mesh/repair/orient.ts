import { triangleArea, volume } from "#mesh/area.ts";
import { triangleCount, type Mesh } from "#mesh/mesh.ts";
import { boundaryLoops, edgePartners, neighbours, nextCorner } from "#mesh/neighbours.ts";

/**
 * Turns triangles so that neighbours across plain edges agree; in each piece the lesser area is turned. `sheet` numbers the pieces that
 * hang together over plain edges. `clashes`: edges where no choice agrees, as on a band with a half twist.
 */
export function orientAlike(mesh: Mesh): { mesh: Mesh; turned: number; clashes: number; sheet: Uint32Array; sheetAreas: number[] } {
  const { triangles } = mesh;
  const { partner } = edgePartners(mesh);
  const total = triangleCount(mesh);
  const sheet = new Uint32Array(total).fill(0xffffffff);
  const turn = new Uint8Array(total);
  const stack = new Uint32Array(total);
  const sheetAreas: number[] = [];
  let clashes = 0;
  let turned = 0;
  for (let seed = 0; seed < total; seed++) {
    if (sheet[seed] !== 0xffffffff) continue;
    const number = sheetAreas.length;
    const members: number[] = [];
    const areas: [number, number] = [0, 0];
    let top = 0;
    stack[top++] = seed;
    sheet[seed] = number;
    while (top > 0) {
      const t = stack[--top]!;
      members.push(t);
      areas[turn[t] as 0 | 1] += triangleArea(mesh, t);
      for (let h = 3 * t; h < 3 * t + 3; h++) {
        const other = partner[h]!;
        if (other < 0) continue;
        const u = (other - (other % 3)) / 3;
        const wanted = turn[t]! ^ (triangles[other] === triangles[h] ? 1 : 0);
        if (sheet[u] === 0xffffffff) {
          sheet[u] = number;
          turn[u] = wanted;
          stack[top++] = u;
        } else if (turn[u] !== wanted) clashes++;
      }
    }
    if (areas[1] > areas[0]) for (const t of members) turn[t]! ^= 1;
    for (const t of members) turned += turn[t]!;
    sheetAreas.push(areas[0] + areas[1]);
  }
  return { mesh: turned > 0 ? turnTriangles(mesh, (t) => turn[t] === 1) : mesh, turned, clashes: clashes / 2, sheet, sheetAreas };
}

/** The mesh with the chosen triangles turned over. */
export function turnTriangles({ positions, triangles }: Mesh, chosen: (t: number) => boolean): Mesh {
  const out = triangles.slice();
  for (let t = 0; t < out.length / 3; t++) if (chosen(t)) [out[3 * t + 1], out[3 * t + 2]] = [out[3 * t + 2]!, out[3 * t + 1]!];
  return { positions, triangles: out };
}

/** Volume with every hole closed by a fan to the middle of its edge; its sign says whether the mesh faces outward. */
export function cappedVolume(mesh: Mesh): number {
  const { positions, triangles } = mesh;
  const loops = boundaryLoops(neighbours(mesh).twin);
  if (loops.length === 0) return volume(mesh);
  const caps: number[] = [];
  const middles: number[] = [];
  loops.forEach((loop, i) => {
    const middle = [0, 0, 0];
    for (const h of loop) {
      for (let k = 0; k < 3; k++) middle[k]! += positions[3 * triangles[h]! + k]! / loop.length;
      caps.push(triangles[nextCorner(h)]!, triangles[h]!, positions.length / 3 + i);
    }
    middles.push(...middle);
  });
  const all = new Float64Array(positions.length + middles.length);
  all.set(positions);
  all.set(middles, positions.length);
  const faces = new Uint32Array(triangles.length + caps.length);
  faces.set(triangles);
  faces.set(caps, triangles.length);
  return volume({ positions: all, triangles: faces });
}
