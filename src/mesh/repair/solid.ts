import { bounds } from "#mesh/area.ts";
import type { Mesh } from "#mesh/mesh.ts";
import type { Winding } from "#mesh/winding.ts";

const BLOCK = 4;
/** Nodes of free space kept all around. */
const MARGIN = 3;

/** Places at equal steps, told inside (1) or outside (0) of a body. Node (i, j, k) is number i + nx · (j + ny · k). */
export interface Solid {
  readonly nx: number;
  readonly ny: number;
  readonly nz: number;
  readonly step: number;
  readonly origin: readonly [number, number, number];
  readonly inside: Uint8Array;
}

/**
 * The body that a mesh winds around, on a grid: winding number over ½. Where no triangle is near and the corners of a block agree the block
 * is taken as one. Hollows that cannot be reached from outside are filled, loose bits left out, and nodes added until the body's skin is
 * a surface everywhere (no two of its cubes meet in an edge or a corner only; Latecki, Eckhardt and Rosenfeld 1995, well-composed sets).
 * Tells how far it is.
 */
export function solidOf(mesh: Mesh, winding: Winding, step: number, tell: (fraction: number) => void): Solid {
  const { low, high } = bounds(mesh);
  const [nx, ny, nz] = [0, 1, 2].map((k) => BLOCK * Math.ceil(((high[k]! - low[k]!) / step + 2 * MARGIN) / BLOCK) + 1) as [number, number, number];
  const origin = [0, 1, 2].map((k) => (low[k]! + high[k]! - step * ([nx, ny, nz][k]! - 1)) / 2) as [number, number, number];
  const solid: Solid = { nx, ny, nz, step, origin, inside: new Uint8Array(nx * ny * nz) };
  sample(solid, mesh, winding, (f) => tell(0.7 * f));
  clearMargin(solid);
  keepLargest(solid);
  tell(0.8);
  while (fillHollows(solid) + compose(solid) > 0) tell(0.9);
  return solid;
}

function sample(solid: Solid, mesh: Mesh, winding: Winding, tell: (fraction: number) => void): void {
  const { nx, ny, nz, step, origin, inside } = solid;
  const band = nodesBeside(solid, mesh);
  const at = (n: number): number => {
    const i = n % nx;
    const j = ((n - i) / nx) % ny;
    return winding.at(origin[0] + i * step, origin[1] + j * step, origin[2] + ((n - i) / nx - j) / ny * step) > 0.5 ? 1 : 0;
  };
  for (let k = 0; k < nz; k += BLOCK) for (let j = 0; j < ny; j += BLOCK) for (let i = 0; i < nx; i += BLOCK) inside[i + nx * (j + ny * k)] = at(i + nx * (j + ny * k));
  const block = new BlockOfNodes(nx, ny);
  for (let k = 0; k + 1 < nz; k += BLOCK) {
    tell(k / nz);
    for (let j = 0; j + 1 < ny; j += BLOCK) for (let i = 0; i + 1 < nx; i += BLOCK) block.fill(i + nx * (j + ny * k), inside, band, at);
  }
}

/** Tells the nodes of one block, corners known, with as few questions as are safe. */
class BlockOfNodes {
  readonly #offsets: number[] = [];
  readonly #corners: number[] = [];
  readonly #neighbours: number[][] = [];
  readonly #group = new Int8Array(BLOCK ** 3);

  constructor(nx: number, ny: number) {
    const strides = [1, nx, nx * ny] as const;
    for (let m = 0; m < BLOCK ** 3; m++) {
      const place = [m % BLOCK, Math.floor(m / BLOCK) % BLOCK, Math.floor(m / BLOCK ** 2)];
      this.#offsets.push(place[0]! * strides[0] + place[1]! * strides[1] + place[2]! * strides[2]);
      this.#neighbours.push([0, 1, 2].flatMap((k) => [place[k]! > 0 ? m - BLOCK ** k : -1, place[k]! + 1 < BLOCK ? m + BLOCK ** k : -1]).filter((w) => w >= 0));
    }
    for (let c = 1; c < 8; c++) this.#corners.push(BLOCK * ((c & 1) * strides[0] + ((c >> 1) & 1) * strides[1] + (c >> 2) * strides[2]));
  }

  fill(first: number, inside: Uint8Array, band: Uint8Array, at: (n: number) => number): void {
    const offsets = this.#offsets;
    const alike = this.#corners.every((c) => inside[first + c] === inside[first]);
    const busy = offsets.some((o) => band[first + o] === 1);
    if (alike && !busy) {
      for (const o of offsets) inside[first + o] = inside[first]!;
      return;
    }
    // off the surface whole groups are alike, unless the surface has a hole there: then their first, middle and last differ, or the corners do
    this.#group.fill(-1);
    for (let m = 1; m < offsets.length; m++) {
      const n = first + offsets[m]!;
      if (band[n]) inside[n] = at(n);
      else if (this.#group[m] === -1) this.#fillGroup(m, first, inside, band, at);
    }
  }

  #fillGroup(seed: number, first: number, inside: Uint8Array, band: Uint8Array, at: (n: number) => number): void {
    const members = [seed];
    this.#group[seed] = 1;
    for (let i = 0; i < members.length; i++)
      for (const w of this.#neighbours[members[i]!]!)
        if (w > 0 && this.#group[w] === -1 && !band[first + this.#offsets[w]!]) {
          this.#group[w] = 1;
          members.push(w);
        }
    members.sort((a, b) => a - b);
    const asked = [members[0]!, members[members.length >> 1]!, members[members.length - 1]!].map((m) => at(first + this.#offsets[m]!));
    const same = asked.every((v) => v === asked[0]);
    for (const m of members) {
      const n = first + this.#offsets[m]!;
      inside[n] = same ? asked[0]! : at(n);
    }
  }
}

function clearMargin({ nx, ny, nz, inside }: Solid): void {
  for (let k = 0; k < nz; k++)
    for (let j = 0; j < ny; j++)
      for (let i = 0; i < nx; i++) if (Math.min(i, j, k, nx - 1 - i, ny - 1 - j, nz - 1 - k) < 2) inside[i + nx * (j + ny * k)] = 0;
}

/** Marks both nodes of every edge of the grid that a triangle may cut. */
function nodesBeside({ nx, ny, nz, step, origin }: Solid, { positions: p, triangles }: Mesh): Uint8Array {
  const band = new Uint8Array(nx * ny * nz);
  const most = [nx - 1, ny - 1, nz - 1];
  const from = [0, 0, 0];
  const to = [0, 0, 0];
  for (let i = 0; i < triangles.length; i += 3) {
    const a = 3 * triangles[i]!, b = 3 * triangles[i + 1]!, c = 3 * triangles[i + 2]!;
    for (let k = 0; k < 3; k++) {
      from[k] = Math.max(0, Math.ceil((Math.min(p[a + k]!, p[b + k]!, p[c + k]!) - step - origin[k]!) / step));
      to[k] = Math.min(most[k]!, Math.floor((Math.max(p[a + k]!, p[b + k]!, p[c + k]!) + step - origin[k]!) / step));
    }
    const ux = p[b]! - p[a]!, uy = p[b + 1]! - p[a + 1]!, uz = p[b + 2]! - p[a + 2]!;
    const vx = p[c]! - p[a]!, vy = p[c + 1]! - p[a + 1]!, vz = p[c + 2]! - p[a + 2]!;
    const mx = uy * vz - uz * vy, my = uz * vx - ux * vz, mz = ux * vy - uy * vx;
    const reach = step * Math.max(Math.abs(mx), Math.abs(my), Math.abs(mz));
    for (let z = from[2]!; z <= to[2]!; z++)
      for (let y = from[1]!; y <= to[1]!; y++)
        for (let x = from[0]!; x <= to[0]!; x++) {
          const off = mx * (origin[0] + x * step - p[a]!) + my * (origin[1] + y * step - p[a + 1]!) + mz * (origin[2] + z * step - p[a + 2]!);
          if (off <= reach && off >= -reach) band[x + nx * (y + ny * z)] = 1;
        }
  }
  return band;
}

/** Numbers reached from `seeds` over the six neighbours that hold `value`, marked 1. */
function flood({ nx, ny, inside }: Solid, seed: number, value: 0 | 1, reached: Uint8Array): number {
  const strides = [1, -1, nx, -nx, nx * ny, -nx * ny];
  const stack = [seed];
  reached[seed] = 1;
  let size = 0;
  while (stack.length > 0) {
    const n = stack.pop()!;
    size++;
    for (const s of strides) {
      const m = n + s;
      // the margin is outside, so no walk through the body can run over the border; one through the outside wraps to the outside
      if (m < 0 || m >= inside.length || reached[m] || inside[m] !== value) continue;
      reached[m] = 1;
      stack.push(m);
    }
  }
  return size;
}

function keepLargest(solid: Solid): void {
  const { inside } = solid;
  const reached = new Uint8Array(inside.length);
  let best = -1;
  let most = 0;
  for (let n = 0; n < inside.length; n++) {
    if (!inside[n] || reached[n]) continue;
    const size = flood(solid, n, 1, reached);
    if (size > most) [best, most] = [n, size];
  }
  if (best < 0) return;
  const kept = new Uint8Array(inside.length);
  flood(solid, best, 1, kept);
  inside.set(kept);
}

/** Fills what cannot be reached from outside; how many nodes. */
function fillHollows(solid: Solid): number {
  const { inside } = solid;
  const reached = new Uint8Array(inside.length);
  flood(solid, 0, 0, reached);
  let filled = 0;
  for (let n = 0; n < inside.length; n++) {
    if (inside[n] || reached[n]) continue;
    inside[n] = 1;
    filled++;
  }
  return filled;
}

/** Adds nodes where two cubes of the body, or two of the outside, meet in an edge or a corner only; how many. Only adds, so it ends. */
function compose({ nx, ny, nz, inside }: Solid): number {
  let added = 0;
  const [x, y, z] = [1, nx, nx * ny];
  const planes = [[x, y], [y, z], [x, z]] as const;
  for (let k = 1; k + 1 < nz; k++)
    for (let j = 1; j + 1 < ny; j++)
      for (let i = 1; i + 1 < nx; i++) {
        const n = i + nx * (j + ny * k);
        // nearly everywhere the eight are alike
        const all = inside[n]! + inside[n + x]! + inside[n + y]! + inside[n + x + y]! + inside[n + z]! + inside[n + x + z]! + inside[n + y + z]! + inside[n + x + y + z]!;
        if (all === 0 || all === 8) continue;
        for (const [u, v] of planes) {
          if (inside[n] !== inside[n + u + v] || inside[n + u] !== inside[n + v] || inside[n] === inside[n + u]) continue;
          const m = inside[n] ? n + u : n;
          inside[m] = 1;
          added++;
        }
        // corners across the cube: both alike, the six others all unlike
        for (let c = 0; c < 4; c++) {
          const a = n + (c & 1 ? x : 0) + (c & 2 ? y : 0);
          const b = n + (c & 1 ? 0 : x) + (c & 2 ? 0 : y) + z;
          if (inside[a] !== inside[b]) continue;
          let sum = 0;
          for (let q = 0; q < 8; q++) sum += inside[n + (q & 1 ? x : 0) + (q & 2 ? y : 0) + (q & 4 ? z : 0)]!;
          if (inside[a] ? sum !== 2 : sum !== 6) continue;
          if (inside[a]) {
            inside[a + (c & 1 ? -x : x)] = 1;
            inside[a + (c & 1 ? -x : x) + (c & 2 ? -y : y)] = 1;
          } else inside[a] = 1;
          added++;
        }
      }
  return added;
}
