import type { Point3 } from "#last/last.ts";
import { TriangleLocator } from "#plane/triangle-locator.ts";
import type { Ground, GroundName, Xy } from "../piece.ts";

/** A place so far off its sheet, in an allowance, is shown at the sheet's nearest corner, mm. */
const beyondMm = 40;

/** Finds places of flat sheets on the last (see `ToCheck.onLast`); a sheet is searched through only once a finding asks for it. */
export function placesOnLast(grounds: readonly Ground[]): (ground: GroundName, at: Xy) => Point3 | undefined {
  const locators = new Map<GroundName, TriangleLocator>();
  return (name, at) => {
    const ground = grounds.find((g) => g.name === name);
    if (!ground || ground.triangles.length === 0) return undefined;
    const locator = locators.get(ground.name) ?? new TriangleLocator(ground.uv, ground.triangles);
    locators.set(ground.name, locator);
    const found = locator.find(at[0], at[1]);
    if (!found) return nearestCorner(ground, at);
    const out: [number, number, number] = [0, 0, 0];
    for (let corner = 0; corner < 3; corner++) {
      const v = ground.triangles[3 * found.triangle + corner]!;
      for (let k = 0; k < 3; k++) out[k]! += found.weights[corner]! * ground.positions[3 * v + k]!;
    }
    return out;
  };
}

function nearestCorner({ uv, positions }: Ground, [x, y]: Xy): Point3 | undefined {
  let best = -1;
  let least = beyondMm * beyondMm;
  for (let v = 0; 2 * v < uv.length; v++) {
    const square = (uv[2 * v]! - x) * (uv[2 * v]! - x) + (uv[2 * v + 1]! - y) * (uv[2 * v + 1]! - y);
    if (square < least) [best, least] = [v, square];
  }
  return best < 0 ? undefined : [positions[3 * best]!, positions[3 * best + 1]!, positions[3 * best + 2]!];
}
