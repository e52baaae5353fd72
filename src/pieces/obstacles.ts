import Flatbush from "flatbush";
import { segmentsMeet } from "#plane/crossing.ts";
import type { Outline, Polyline } from "#plane/outline.ts";
import type { Xy } from "./piece.ts";

/** Lines that a text must not touch, sorted by where they lie so that many places can be tried. */
export class Obstacles {
  /** ax ay bx by a segment */
  readonly #segments: Float64Array;
  readonly #index: Flatbush;

  constructor({ xy }: Outline, lines: readonly Polyline[]) {
    const segments: number[] = [];
    for (let i = 0, j = xy.length - 2; i < xy.length; j = i, i += 2) segments.push(xy[j]!, xy[j + 1]!, xy[i]!, xy[i + 1]!);
    for (const line of lines) for (let i = 0; i + 3 < line.xy.length; i += 2) segments.push(line.xy[i]!, line.xy[i + 1]!, line.xy[i + 2]!, line.xy[i + 3]!);
    this.#segments = Float64Array.from(segments);
    this.#index = new Flatbush(segments.length / 4);
    for (let k = 0; k < segments.length; k += 4)
      this.#index.add(Math.min(segments[k]!, segments[k + 2]!), Math.min(segments[k + 1]!, segments[k + 3]!), Math.max(segments[k]!, segments[k + 2]!), Math.max(segments[k + 1]!, segments[k + 3]!));
    this.#index.finish();
  }

  /** Whether a closed line of these corners meets any of them. */
  meet(corners: readonly Xy[]): boolean {
    const xs = corners.map(([x]) => x), ys = corners.map(([, y]) => y);
    return this.#index.search(Math.min(...xs), Math.min(...ys), Math.max(...xs), Math.max(...ys)).some((k) => corners.some((a, c) => this.#crosses(k, a, corners[(c + 1) % corners.length]!)));
  }

  #crosses(k: number, a: Xy, b: Xy): boolean {
    const s = this.#segments;
    return segmentsMeet(a[0], a[1], b[0], b[1], s[4 * k]!, s[4 * k + 1]!, s[4 * k + 2]!, s[4 * k + 3]!);
  }
}
