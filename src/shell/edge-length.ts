import { distanceInSpace } from "#flatten/distance.ts";

/** Length of a row of vertices in space, mm. */
export function edgeLength(p: Float64Array, ids: Uint32Array): number {
  let sum = 0;
  for (let k = 1; k < ids.length; k++) sum += distanceInSpace(p, ids[k - 1]!, ids[k]!);
  return sum;
}

/** Length of a row of vertices on the flat, mm. */
export function flatLength({ uv }: { readonly uv: Float64Array }, ids: Uint32Array): number {
  let sum = 0;
  for (let i = 0; i + 1 < ids.length; i++) sum += Math.sqrt((uv[2 * ids[i]!]! - uv[2 * ids[i + 1]!]!) ** 2 + (uv[2 * ids[i]! + 1]! - uv[2 * ids[i + 1]! + 1]!) ** 2);
  return sum;
}
