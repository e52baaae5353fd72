import { bounds } from "./area.ts";
import { triangleCount, type Mesh } from "./mesh.ts";

/** Triangle numbers along a space-filling curve (Morton 1966, 10 bits an axis) through their middles, so that near ones come together. */
export function spatialOrder(mesh: Mesh): Uint32Array {
  const { positions: p, triangles } = mesh;
  const { low, high } = bounds(mesh);
  const widest = Math.max(high[0] - low[0], high[1] - low[1], high[2] - low[2]);
  const scale = widest > 0 ? 1023 / widest : 0;
  const count = triangleCount(mesh);
  const keys = new Uint32Array(count);
  for (let t = 0; t < count; t++) {
    const [a, b, c] = [3 * triangles[3 * t]!, 3 * triangles[3 * t + 1]!, 3 * triangles[3 * t + 2]!];
    let key = 0;
    for (let k = 0; k < 3; k++) key |= spread(Math.floor(((p[a + k]! + p[b + k]! + p[c + k]!) / 3 - low[k]!) * scale)) << k;
    keys[t] = key;
  }
  return radixOrder(keys);
}

/** The ten low bits of x, each followed by two zeros. */
function spread(x: number): number {
  x = (x | (x << 16)) & 0x30000ff;
  x = (x | (x << 8)) & 0x300f00f;
  x = (x | (x << 4)) & 0x30c30c3;
  return (x | (x << 2)) & 0x9249249;
}

/** Indices that sort the keys (30 bits), equal ones in their own order: three passes of 10 bits. */
function radixOrder(keys: Uint32Array): Uint32Array {
  let order = new Uint32Array(keys.length);
  let other = new Uint32Array(keys.length);
  for (let i = 0; i < order.length; i++) order[i] = i;
  for (let shift = 0; shift < 30; shift += 10) {
    const place = new Uint32Array(1025);
    for (const key of keys) place[((key >>> shift) & 1023) + 1]!++;
    for (let d = 0; d < 1024; d++) place[d + 1]! += place[d]!;
    for (const i of order) other[place[(keys[i]! >>> shift) & 1023]!++] = i;
    [order, other] = [other, order];
  }
  return order;
}
