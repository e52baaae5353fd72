import { contains } from "#plane/inside.ts";
import type { Outline } from "#plane/outline.ts";
import type { Xy } from "../piece.ts";

/** The narrowest place of a piece: how wide, and both ends of the way across. */
export interface Neck {
  readonly mm: number;
  readonly from: Xy;
  readonly to: Xy;
}

/** What a neck cuts off is a part of the piece only where its edge is at least so long, and so many times as long as the neck is wide. */
const leastWayMm = 30;
const leastWayTimes = 3;

/**
 * The least way across a piece, where it is less than `withinMm`: of all straight ways inside it from edge to edge that leave at least
 * 30 mm of edge, and thrice the width, to either side. So corners are no necks, but a tip that is still narrow 15 mm from its end is one.
 * Distances of points from segments by a grid, so the time grows with the number of points.
 */
export function narrowest(outline: Outline, withinMm: number): Neck | undefined {
  const { xy, arc, count, total } = thinned(outline.xy);
  const grid = new Grid(xy, count, withinMm + stepMm);
  const most = total - leastWayMm;
  let best = withinMm;
  let neck: Neck | undefined;
  for (let i = 0; i < count; i++) {
    const x = xy[2 * i]!, y = xy[2 * i + 1]!, s = arc[i]!;
    const { from, to, each, columns } = grid.around(x, y);
    for (let row = from; row <= to; row += columns) {
      for (let k = grid.starts[row]!; k < grid.starts[row + each]!; k++) {
        const j = grid.items[k]!;
        const away = Math.abs(s - arc[j]!);
        if (away < leastWayMm || away > most) continue;
        const ax = xy[2 * j]!, ay = xy[2 * j + 1]!;
        const dx = xy[2 * j + 2]! - ax, dy = xy[2 * j + 3]! - ay;
        // The inside lies to the left of every segment.
        if (dx * (y - ay) - dy * (x - ax) <= 0) continue;
        const t = Math.min(1, Math.max(0, ((x - ax) * dx + (y - ay) * dy) / (dx * dx + dy * dy)));
        const fx = ax + t * dx, fy = ay + t * dy;
        const mm = Math.sqrt((x - fx) * (x - fx) + (y - fy) * (y - fy));
        if (mm >= best || Math.min(away, total - away) < leastWayTimes * mm) continue;
        if (!leadsInside(xy, count, i, fx - x, fy - y) || !contains(outline, (x + fx) / 2, (y + fy) / 2)) continue;
        best = mm;
        neck = { mm, from: [x, y], to: [fx, fy] };
      }
    }
  }
  return neck;
}

/** Whether a direction leads from point i into the outline: left of both its sides, or of either where the corner is hollow. */
function leadsInside(xy: Float64Array, count: number, i: number, dx: number, dy: number): boolean {
  const h = 2 * ((i + count - 1) % count);
  const px = xy[2 * i]! - xy[h]!, py = xy[2 * i + 1]! - xy[h + 1]!;
  const qx = xy[2 * i + 2]! - xy[2 * i]!, qy = xy[2 * i + 3]! - xy[2 * i + 1]!;
  const before = px * dy - py * dx > 0;
  const after = qx * dy - qy * dx > 0;
  return px * qy - py * qx < 0 ? before || after : before && after;
}

/** Distance of neighbours, mm, where the edge has no corner. */
const stepMm = 1.2;
/** Cosine of 20 degrees. */
const cornerCosine = 0.94;

/** The outline, counter-clockwise, with neighbours at most `stepMm` apart, and where it has no corners not much nearer; the first point repeated. */
function thinned(own: Float64Array): { readonly xy: Float64Array; readonly arc: Float64Array; readonly count: number; readonly total: number } {
  const n = own.length / 2;
  const out: number[] = [];
  for (let i = 0; i < n; i++) {
    const x = own[2 * i]!, y = own[2 * i + 1]!;
    const h = 2 * ((i + n - 1) % n), k = 2 * ((i + 1) % n);
    const px = x - own[h]!, py = y - own[h + 1]!, qx = own[k]! - x, qy = own[k + 1]! - y;
    const lx = x - out[out.length - 2]!, ly = y - out[out.length - 1]!;
    const next = Math.sqrt(qx * qx + qy * qy);
    const corner = px * qx + py * qy < cornerCosine * Math.sqrt(px * px + py * py) * next;
    if (out.length > 0 && !corner && Math.sqrt(lx * lx + ly * ly) + next < stepMm) continue;
    out.push(x, y);
    const parts = Math.ceil(next / stepMm - 1e-9);
    for (let p = 1; p < parts; p++) out.push(x + (qx * p) / parts, y + (qy * p) / parts);
  }
  const count = out.length / 2;
  out.push(out[0]!, out[1]!);
  const xy = Float64Array.from(out);
  const arc = new Float64Array(count + 1);
  for (let i = 0; i < count; i++) {
    const dx = xy[2 * i + 2]! - xy[2 * i]!, dy = xy[2 * i + 3]! - xy[2 * i + 1]!;
    arc[i + 1] = arc[i]! + Math.sqrt(dx * dx + dy * dy);
  }
  return { xy, arc, count, total: arc[count]! };
}

/** Short segments by the cell in which they begin. */
class Grid {
  /** Where the segments of each cell begin in `items`, row by row. */
  readonly starts: Uint32Array;
  readonly items: Uint32Array;
  readonly #cell: number;
  readonly #minX: number;
  readonly #minY: number;
  readonly #columns: number;
  readonly #rows: number;

  constructor(xy: Float64Array, count: number, cell: number) {
    let minX = Infinity, minY = Infinity, maxX = -Infinity, maxY = -Infinity;
    for (let i = 0; i < count; i++) {
      minX = Math.min(minX, xy[2 * i]!);
      maxX = Math.max(maxX, xy[2 * i]!);
      minY = Math.min(minY, xy[2 * i + 1]!);
      maxY = Math.max(maxY, xy[2 * i + 1]!);
    }
    this.#cell = cell;
    this.#minX = minX;
    this.#minY = minY;
    this.#columns = Math.floor((maxX - minX) / cell) + 1;
    this.#rows = Math.floor((maxY - minY) / cell) + 1;
    this.starts = new Uint32Array(this.#columns * this.#rows + 1);
    const cells = new Uint32Array(count);
    for (let i = 0; i < count; i++) {
      cells[i] = Math.floor((xy[2 * i + 1]! - minY) / cell) * this.#columns + Math.floor((xy[2 * i]! - minX) / cell);
      this.starts[cells[i]! + 1]!++;
    }
    for (let c = 0; c + 1 < this.starts.length; c++) this.starts[c + 1]! += this.starts[c]!;
    const next = this.starts.slice();
    this.items = new Uint32Array(count);
    for (let i = 0; i < count; i++) this.items[next[cells[i]!]!++] = i;
  }

  /** The cell of a point and those beside it: the first cell of the first and of the last row, cells in each, and cells from row to row. */
  around(x: number, y: number): { readonly from: number; readonly to: number; readonly each: number; readonly columns: number } {
    const column = Math.floor((x - this.#minX) / this.#cell);
    const row = Math.floor((y - this.#minY) / this.#cell);
    const left = Math.max(0, column - 1);
    const right = Math.min(this.#columns - 1, column + 1);
    const from = Math.max(0, row - 1) * this.#columns + left;
    return { from, to: Math.min(this.#rows - 1, row + 1) * this.#columns + left, each: right - left + 1, columns: this.#columns };
  }
}
