import Flatbush from "flatbush";
import { orient2d } from "robust-predicates";
import { segmentsMeet } from "#plane/crossing.ts";
import type { Outline, Polyline } from "#plane/outline.ts";
import { clearanceRound, type Clearance } from "./clearance.ts";
import type { Xy } from "./piece.ts";

/** The room that a piece has for texts: inside its outline, clear of its lines. Sorted by place, so that many places can be tried. */
export class Room {
  /** ax ay bx by a segment, those of the outline first */
  readonly #segments: Float64Array;
  readonly #outline: number;
  readonly #index: Flatbush;
  #right = -Infinity;

  constructor({ xy }: Outline, lines: readonly Polyline[]) {
    const segments: number[] = [];
    for (let i = 0, j = xy.length - 2; i < xy.length; j = i, i += 2) segments.push(xy[j]!, xy[j + 1]!, xy[i]!, xy[i + 1]!);
    this.#outline = segments.length / 4;
    for (const line of lines) for (let i = 0; i + 3 < line.xy.length; i += 2) segments.push(line.xy[i]!, line.xy[i + 1]!, line.xy[i + 2]!, line.xy[i + 3]!);
    this.#segments = Float64Array.from(segments);
    this.#index = new Flatbush(segments.length / 4);
    for (let k = 0; k < segments.length; k += 4) {
      const [ax, ay, bx, by] = [segments[k]!, segments[k + 1]!, segments[k + 2]!, segments[k + 3]!];
      this.#index.add(Math.min(ax, bx), Math.min(ay, by), Math.max(ax, bx), Math.max(ay, by));
      this.#right = Math.max(this.#right, ax, bx);
    }
    this.#index.finish();
  }

  /** Whether a point lies in the outline; the winding number of `contains` (src/plane/inside.ts), of the segments to the right of the point alone. */
  holds(x: number, y: number): boolean {
    const s = this.#segments;
    let turns = 0;
    for (const k of this.#index.search(x, y, Math.max(x, this.#right), y)) {
      if (k >= this.#outline) continue;
      const [ax, ay, bx, by] = [s[4 * k]!, s[4 * k + 1]!, s[4 * k + 2]!, s[4 * k + 3]!];
      const side = orient2d(ax, ay, bx, by, x, y);
      if (side === 0 && x >= Math.min(ax, bx) && x <= Math.max(ax, bx)) return true;
      if (ay <= y && by > y && side < 0) turns++;
      else if (ay > y && by <= y && side > 0) turns--;
    }
    return turns !== 0;
  }

  /** How near the outline and the lines come to the places of a grid round a middle. */
  clearance(middle: Xy, stepMm: number, reach: number): Clearance {
    return clearanceRound(this.#segments, middle, stepMm, reach);
  }

  /** Whether the outline or any of the lines meets the convex figure of these corners, counter-clockwise, or lies in it. */
  meets(corners: readonly Xy[]): boolean {
    let minX = Infinity, minY = Infinity, maxX = -Infinity, maxY = -Infinity;
    for (const [x, y] of corners) {
      if (x < minX) minX = x;
      if (x > maxX) maxX = x;
      if (y < minY) minY = y;
      if (y > maxY) maxY = y;
    }
    for (const k of this.#index.search(minX, minY, maxX, maxY)) if (this.#begins(k, corners) || this.#crosses(k, corners)) return true;
    return false;
  }

  /** Whether segment k begins in the figure. */
  #begins(k: number, corners: readonly Xy[]): boolean {
    const [x, y] = [this.#segments[4 * k]!, this.#segments[4 * k + 1]!];
    let a = corners[corners.length - 1]!;
    for (const b of corners) {
      if (orient2d(a[0], a[1], b[0], b[1], x, y) > 0) return false;
      a = b;
    }
    return true;
  }

  /** Whether segment k crosses a side of the closed line. */
  #crosses(k: number, corners: readonly Xy[]): boolean {
    const s = this.#segments;
    let a = corners[corners.length - 1]!;
    for (const b of corners) {
      if (segmentsMeet(a[0], a[1], b[0], b[1], s[4 * k]!, s[4 * k + 1]!, s[4 * k + 2]!, s[4 * k + 3]!)) return true;
      a = b;
    }
    return false;
  }
}
