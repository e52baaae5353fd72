import { finding, type Finding } from "#base/findings.ts";
import { Refusal } from "#base/refusal.ts";
import { bounds } from "#mesh/area.ts";
import type { Mesh } from "#mesh/mesh.ts";
import type { Pose } from "./pose.ts";
import { eachTriangle } from "./samples.ts";
import { dot, sub } from "./vector.ts";

/** Surface farther than one to two cells from anything scanned was not scanned; a cell as a share of the longest extent: 3 mm on a last. */
const cellShare = 0.012;
/** How far beyond the cleaned scan's box a triangle may lie and count still, as a share of the longest extent. */
const widened = 0.05;
/** More of the whole surface closed by guess than this, or more of the bottom or of an end than that, is no scan of a last. A missing comb is 5 to 10 % of the whole, a missing bottom 25 %. */
const mostOfAll = 0.15;
const mostOfPart = 0.25;
/** From here on a guessed part of the bottom is told. */
const toldOfBottom = 0.03;
/** Cosine to straight down within which a surface belongs to the bottom: 60 degrees. */
const downward = 0.5;
/** The ends: what looks fore or aft within 45 degrees in the first and last tenth of the length. */
const endward = 0.7;
const endShare = 0.1;

/** Tells places where a scan has surface from those that were closed over when it was cleaned. Points in the file's own coordinates. */
export class Scanned {
  readonly #cells = new Set<number>();
  readonly #cell: number;
  readonly #low: readonly number[];

  /**
   * @param scan as read, before anything was closed
   * @param cleaned what was made of it: only what was scanned in its box, a twentieth wider, counts, so that debris farther off has no say
   */
  constructor(scan: Mesh, cleaned: Mesh) {
    const { low, high } = bounds(cleaned);
    const extent = Math.max(high[0] - low[0], high[1] - low[1], high[2] - low[2]);
    const from = low.map((v) => v - widened * extent), to = high.map((v) => v + widened * extent);
    this.#low = from;
    const { positions: p } = scan;
    const inside = (v: number): boolean => p[v]! >= from[0]! && p[v]! <= to[0]! && p[v + 1]! >= from[1]! && p[v + 1]! <= to[1]! && p[v + 2]! >= from[2]! && p[v + 2]! <= to[2]!;
    const triangles = scan.triangles.slice();
    let n = 0;
    for (let t = 0; t < triangles.length; t += 3) {
      const corners = scan.triangles.subarray(t, t + 3);
      if (!corners.every((v) => inside(3 * v))) continue;
      triangles.set(corners, n);
      n += 3;
    }
    this.#cell = Math.max(cellShare * extent, 1.5 * meanEdge({ positions: p, triangles: triangles.subarray(0, n) }), 1e-300);
    // The middle of a long triangle may lie cells away from its corners.
    for (let t = 0; t < n; t += 3) {
      for (let k = 0; k < 3; k++) this.#cells.add(this.#key(p[3 * triangles[t + k]!]!, p[3 * triangles[t + k]! + 1]!, p[3 * triangles[t + k]! + 2]!));
      const [a, b, c] = [3 * triangles[t]!, 3 * triangles[t + 1]!, 3 * triangles[t + 2]!];
      this.#cells.add(this.#key((p[a]! + p[b]! + p[c]!) / 3, (p[a + 1]! + p[b + 1]! + p[c + 1]!) / 3, (p[a + 2]! + p[b + 2]! + p[c + 2]!) / 3));
    }
  }

  near(x: number, y: number, z: number): boolean {
    const s = this.#cell;
    for (let a = -1; a <= 1; a++) for (let b = -1; b <= 1; b++) for (let c = -1; c <= 1; c++) if (this.#cells.has(this.#key(x + a * s, y + b * s, z + c * s))) return true;
    return false;
  }

  #key(x: number, y: number, z: number): number {
    const at = (v: number, k: number): number => Math.floor((v - this.#low[k]!) / this.#cell) + 2;
    return (at(x, 0) * 4096 + at(y, 1)) * 4096 + at(z, 2);
  }
}

function meanEdge({ positions: p, triangles }: Mesh): number {
  const stride = 3 * Math.max(1, Math.floor(triangles.length / 6000));
  let [sum, n] = [0, 0];
  for (let t = 0; t < triangles.length; t += stride) {
    const [a, b] = [3 * triangles[t]!, 3 * triangles[t + 1]!];
    sum += Math.sqrt((p[a]! - p[b]!) ** 2 + (p[a + 1]! - p[b + 1]!) ** 2 + (p[a + 2]! - p[b + 2]!) ** 2);
    n++;
  }
  return n > 0 ? sum / n : 0;
}

/**
 * Refuses a scan of which too much was closed by guess, and says where the bottom was.
 * @param mesh cleaned, in the file's coordinates
 * @param pose how it lies, in the same
 * @throws Refusal that says what is missing and how to scan it
 */
export function refusePart(mesh: Mesh, scanned: Scanned, { axes: { origin, x: ahead, z: up }, length }: Pose): Finding[] {
  const share = { all: new Share(), bottom: new Share(), toe: new Share(), heel: new Share() };
  eachTriangle(mesh, (area, nx, ny, nz, x, y, z) => {
    const guessed = scanned.near(x, y, z) ? 0 : area;
    const [facing, place] = [dot(ahead, [nx, ny, nz]), dot(ahead, sub([x, y, z], origin)) / length];
    share.all.add(area, guessed);
    if (dot(up, [nx, ny, nz]) < -downward) share.bottom.add(area, guessed);
    if (facing > endward && place > 1 - endShare) share.toe.add(area, guessed);
    if (facing < -endward && place < endShare) share.heel.add(area, guessed);
  });
  const { all, bottom, toe, heel } = share;
  for (const [end, part] of [["toe", toe], ["heel", heel]] as const) if (part.guessed > mostOfPart) throw new Refusal(finding("end-not-scanned", { end, share: part.guessed }));
  if (all.guessed > mostOfAll || bottom.guessed > mostOfPart) throw new Refusal(finding("part-not-scanned", { ofAll: all.guessed, ofBottom: bottom.guessed }));
  return bottom.guessed > toldOfBottom ? [finding("bottom-guessed", { share: bottom.guessed })] : [];
}

/** How much of a region was closed by guess. */
class Share {
  #area = 0;
  #guessed = 0;

  add(area: number, guessed: number): void {
    this.#area += area;
    this.#guessed += guessed;
  }

  get guessed(): number {
    return this.#area > 0 ? this.#guessed / this.#area : 0;
  }
}
