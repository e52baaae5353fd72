import { distanceInSpace } from "#flatten/distance.ts";
import { medialSign, type Last, type Point3 } from "#last/last.ts";
import type { Half } from "#lines/feather.ts";
import { edgeLength } from "./edge-length.ts";
import { crossings, partLength, type BeneathRow } from "./girths.ts";
import type { Shell } from "./shell.ts";

/**
 * The rows with what a tape over the lasted upper reads more to the throat and up the back, and with the ways up the sides at their
 * lowest places. A tape lies on the outside of the upper, half of whose thickness stands above the shell `over`; both shells have the
 * same vertices. All mm.
 */
export function withTape(rows: readonly BeneathRow[], last: Pick<Last, "side">, onLast: Shell, over: Shell, upperThicknessMm: number): readonly BeneathRow[] {
  const { edges } = onLast, bare = onLast.mesh.positions, out = outsideOf(bare, over.mesh.positions, upperThicknessMm / 2);
  const more = (ids: Uint32Array): number => edgeLength(out, ids) - edgeLength(bare, ids);
  const lowest = (half: Half): BeneathRow => {
    const sign = half === "medial" ? medialSign(last.side) : -medialSign(last.side);
    const way = crossings(onLast, lowestPlane(onLast, half)).filter(({ at }) => sign * at[1] > 0);
    const length = (p: Float64Array): number => way.reduce((sum, part) => sum + partLength(p, part), 0);
    return { key: "lowest", half, onLastMm: length(bare), overMm: length(over.mesh.positions), tapeMoreMm: length(out) - length(bare) };
  };
  const taped = rows.map((row) => (row.key === "centre" ? { ...row, tapeMoreMm: more(edges.centre) } : row.key === "back" ? { ...row, tapeMoreMm: more(edges.backMedial) } : row));
  return [...taped, lowest("medial"), lowest("lateral")];
}

/** As far again beyond where each vertex was pushed to. */
function outsideOf(bare: Float64Array, over: Float64Array, byMm: number): Float64Array {
  const out = over.slice();
  for (let v = 0; v < out.length; v += 3) {
    const [x, y, z] = [over[v]! - bare[v]!, over[v + 1]! - bare[v + 1]!, over[v + 2]! - bare[v + 2]!], far = Math.sqrt(x * x + y * y + z * z);
    if (far === 0) continue;
    out[v]! += (byMm * x) / far;
    out[v + 1]! += (byMm * y) / far;
    out[v + 2]! += (byMm * z) / far;
  }
  return out;
}

/** Square to the feather line through the place of the topline that lies nearest to it. Ends of the topline belong to back and throat. */
function lowestPlane({ mesh: { positions: p }, edges }: Shell, half: Half): { readonly through: Point3; readonly normal: Point3 } {
  const [topline, feather] = half === "medial" ? [edges.toplineMedial, edges.featherMedial] : [edges.toplineLateral, edges.featherLateral];
  let least = Infinity, top = topline[0]!, foot = 1;
  for (const t of topline) {
    for (let k = 1; k + 1 < feather.length; k++) {
      const far = distanceInSpace(p, t, feather[k]!);
      if (far < least) [least, top, foot] = [far, t, k];
    }
  }
  const at = (v: number): Point3 => [p[3 * v]!, p[3 * v + 1]!, p[3 * v + 2]!];
  const [a, b, before, after] = [at(feather[foot]!), at(top), at(feather[foot - 1]!), at(feather[foot + 1]!)];
  const up: Point3 = [b[0] - a[0], b[1] - a[1], b[2] - a[2]], along: Point3 = [after[0] - before[0], after[1] - before[1], after[2] - before[2]];
  const share = (up[0] * along[0] + up[1] * along[1] + up[2] * along[2]) / (up[0] ** 2 + up[1] ** 2 + up[2] ** 2);
  return { through: a, normal: [along[0] - share * up[0], along[1] - share * up[1], along[2] - share * up[2]] };
}
