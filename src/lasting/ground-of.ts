import { finding } from "#base/findings.ts";
import { Refusal } from "#base/refusal.ts";
import type { Last } from "#last/last.ts";
import { placeInWords } from "#last/place-in-words.ts";
import { ClosestPoint } from "#mesh/closest.ts";
import type { Mesh } from "#mesh/mesh.ts";
import { boundaryLoops, neighbours } from "#mesh/neighbours.ts";
import { Ground } from "#wrap/ground.ts";
import type { CutUpper } from "./upper.ts";

/**
 * What the upper is pulled over: the shell's surface lifted over what lies beneath, with an apron of the last above the topline, so that
 * an edge that stays high still lies on the last. Beyond the feather line it goes on straight by itself. `onLast` has the same triangles
 * on the last's own surface; the banks of the back lie in one place.
 */
export interface LastGround {
  readonly over: Mesh;
  readonly onLast: Mesh;
}

/** How far the apron reaches, in so many rows, mm. */
const apronMm = 15;
const rows = 5;
/** Where the surface turns by more than this from one row to the next (cosine of 60 degrees) the last ends. */
const turnCosine = 0.5;

/** @throws Refusal `lasting-hole` where the last has a hole beneath the upper */
export function groundOf({ over, onLast }: Pick<CutUpper, "over" | "onLast">, last: Last): LastGround {
  refuseHoles(last, onLast.mesh);
  const loop = toplineLoop(onLast);
  const n = loop.length, from = onLast.mesh.positions.length / 3;
  const triangles = Array.from(onLast.mesh.triangles), bare = Array.from(onLast.mesh.positions), lifted = Array.from(over.mesh.positions);
  const heights = loop.map((v) => distance(over.mesh.positions, onLast.mesh.positions, v));
  const march = new March(new Ground(last.mesh), Float64Array.from(loop.flatMap((v) => [0, 1, 2].map((d) => onLast.mesh.positions[3 * v + d]!))));
  const name = (row: number, i: number): number => (row === 0 ? loop[i % n]! : from + (row - 1) * n + (i % n));
  for (let row = 1; row <= rows; row++) {
    march.step(apronMm / rows);
    for (let i = 0; i < n; i++) {
      const a = name(row - 1, i), b = name(row - 1, i + 1), c = name(row, i), d = name(row, i + 1);
      // The loop runs with the shell on its left, so the apron lies on its right.
      triangles.push(a, c, b, b, c, d);
      for (let k = 0; k < 3; k++) {
        bare.push(march.at[3 * i + k]!);
        lifted.push(march.at[3 * i + k]! + heights[i]! * march.plane[4 * i + k]!);
      }
    }
  }
  const all = Uint32Array.from(triangles);
  return { over: { positions: Float64Array.from(lifted), triangles: all }, onLast: { positions: Float64Array.from(bare), triangles: all } };
}

/** Vertices of the topline once round with the shell on the left as seen from outside; the two banks of the back count once. */
function toplineLoop({ mesh: { triangles: t }, edges: { toplineMedial, toplineLateral } }: CutUpper["onLast"]): readonly number[] {
  const loop = [...toplineMedial, ...Array.from(toplineLateral).reverse().slice(1, -1)];
  const [a, b] = [loop[1]!, loop[2]!];
  for (let k = 0; k < t.length; k++) if (t[k] === a && t[k % 3 === 2 ? k - 2 : k + 1] === b) return loop;
  return loop.reverse();
}

/** A closed row of points that walks over a surface, square to itself and away from what lies on its left. */
class March {
  readonly at: Float64Array;
  /** Planes of the surface under the points: unit normal and offset. */
  readonly plane: Float64Array;
  readonly #ground: Ground;
  readonly #near: Int32Array;
  readonly #first: Float64Array;

  constructor(ground: Ground, start: Float64Array) {
    const n = start.length / 3;
    this.#ground = ground;
    this.at = start.slice();
    this.plane = new Float64Array(4 * n);
    this.#near = new Int32Array(n).fill(-1);
    ground.planesInto(this.plane, new Float64Array(3 * n), this.#near, start);
    this.#first = this.#spans();
  }

  /** One row on. Where the row has drawn together, as round the throat, it goes on by as much less, so that it never crosses itself. */
  step(mm: number): void {
    const { at, plane } = this, n = this.#near.length;
    const spans = this.#spans(), next = new Float64Array(3 * n), foot = new Float64Array(3 * n), under = new Float64Array(4 * n);
    for (let i = 0; i < n; i++) {
      const a = 3 * ((i + n - 1) % n), b = 3 * ((i + 1) % n);
      const tx = at[b]! - at[a]!, ty = at[b + 1]! - at[a + 1]!, tz = at[b + 2]! - at[a + 2]!;
      const nx = plane[4 * i]!, ny = plane[4 * i + 1]!, nz = plane[4 * i + 2]!;
      const x = ty * nz - tz * ny, y = tz * nx - tx * nz, z = tx * ny - ty * nx;
      const by = (mm * Math.min(1, spans[i]! / this.#first[i]!)) / Math.sqrt(x * x + y * y + z * z);
      next[3 * i] = at[3 * i]! + by * x;
      next[3 * i + 1] = at[3 * i + 1]! + by * y;
      next[3 * i + 2] = at[3 * i + 2]! + by * z;
    }
    this.#ground.planesInto(under, foot, this.#near, next);
    for (let i = 0; i < n; i++) {
      const cosine = under[4 * i]! * plane[4 * i]! + under[4 * i + 1]! * plane[4 * i + 1]! + under[4 * i + 2]! * plane[4 * i + 2]!;
      if (cosine < turnCosine) continue;
      at.set(foot.subarray(3 * i, 3 * i + 3), 3 * i);
      plane.set(under.subarray(4 * i, 4 * i + 4), 4 * i);
    }
  }

  /** From the point before to the point after each, mm. */
  #spans(): Float64Array {
    const { at } = this, n = at.length / 3;
    return Float64Array.from({ length: n }, (_, i) => {
      const a = 3 * ((i + n - 1) % n), b = 3 * ((i + 1) % n);
      return Math.sqrt((at[b]! - at[a]!) ** 2 + (at[b + 1]! - at[a + 1]!) ** 2 + (at[b + 2]! - at[a + 2]!) ** 2);
    });
  }
}

const distance = (p: Float64Array, q: Float64Array, v: number): number => Math.sqrt((p[3 * v]! - q[3 * v]!) ** 2 + (p[3 * v + 1]! - q[3 * v + 1]!) ** 2 + (p[3 * v + 2]! - q[3 * v + 2]!) ** 2);

/** An open edge of the last so near beneath the shell is a hole under the upper, mm. */
const beneathMm = 1.5;

function refuseHoles(last: Last, shell: Mesh): void {
  const { positions: p, triangles: t } = last.mesh;
  const holes = boundaryLoops(neighbours(last.mesh).twin);
  if (holes.length === 0) return;
  const onShell = new ClosestPoint(shell), rim = new Set(boundaryLoops(neighbours(shell).twin).flatMap((loop) => Array.from(loop, (h) => shell.triangles[h]!)));
  for (const hole of holes)
    for (const h of hole) {
      const v = 3 * t[h]!, at = [p[v]!, p[v + 1]!, p[v + 2]!] as const;
      const { triangle, distance } = onShell.find(at);
      if (distance < beneathMm && ![0, 1, 2].some((k) => rim.has(shell.triangles[3 * triangle + k]!))) throw new Refusal(finding("lasting-hole", { where: placeInWords(last, at) }, at));
    }
}
