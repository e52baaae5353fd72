import { triangleArea } from "#mesh/area.ts";
import { triangleCount, type Mesh } from "#mesh/mesh.ts";
import { faceNormals } from "#mesh/normals.ts";
import { DIRECTIONS, type Sight } from "#mesh/sight.ts";
import { turnTriangles } from "./orient.ts";

/** So many triangles of a sheet are asked, evenly spread over it; fewer where there are many sheets. */
const ASKED = 40;
const MOST_ASKED = 12_000;
/** A place is asked this share of the scan's size off its triangle: 0.03 mm on a last. */
const OFF = 1e-4;

/**
 * Turns whole sheets (pieces that hang together, numbered by `sheet`) so that the side from which one sees farther looks outward. Sheets that
 * see out on neither side, deep inside, stay as they are.
 */
export function faceOut(mesh: Mesh, sheet: Uint32Array, sheets: number, size: number, sight: Sight): Mesh {
  const score = new Float64Array(sheets);
  const members = new Uint32Array(sheets);
  for (const s of sheet) members[s]!++;
  const each = Math.max(1, Math.min(ASKED, Math.floor(MOST_ASKED / sheets)));
  const seen = new Uint32Array(sheets);
  const normals = faceNormals(mesh);
  for (let t = 0; t < triangleCount(mesh); t++) {
    const s = sheet[t]!;
    const stride = Math.max(1, Math.floor(members[s]! / each));
    if (seen[s]!++ % stride !== 0) continue;
    score[s]! += triangleArea(mesh, t) * (viewOf(mesh, normals, t, 1, size, sight) - viewOf(mesh, normals, t, -1, size, sight));
  }
  return score.some((s) => s < 0) ? turnTriangles(mesh, (t) => score[sheet[t]!]! < 0) : mesh;
}

/** Share of the directions on one side of triangle t (1: where it looks, −1: behind it) in which one sees out. */
function viewOf({ positions: p, triangles }: Mesh, normals: Float64Array, t: number, side: 1 | -1, size: number, sight: Sight): number {
  const [nx, ny, nz] = [side * normals[3 * t]!, side * normals[3 * t + 1]!, side * normals[3 * t + 2]!];
  const at = (k: number): number => (p[3 * triangles[3 * t]! + k]! + p[3 * triangles[3 * t + 1]! + k]! + p[3 * triangles[3 * t + 2]! + k]!) / 3;
  const [x, y, z] = [at(0) + OFF * size * nx, at(1) + OFF * size * ny, at(2) + OFF * size * nz];
  let asked = 0;
  let free = 0;
  for (const [dx, dy, dz] of DIRECTIONS) {
    if (dx * nx + dy * ny + dz * nz < 0.25) continue;
    asked++;
    if (sight.free(x, y, z, dx, dy, dz)) free++;
  }
  return asked === 0 ? 0 : free / asked;
}
