/** Upright window on a sheet, mm. */
export interface Window {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

/** The runs of a polyline that lie in a window; of a closed one the last point joins the first. */
export function runsIn(xy: Float64Array, closed: boolean, { x, y, width, height }: Window): readonly Float64Array[] {
  const last = xy.length - 2, end = closed ? last + 2 : last;
  const runs: number[][] = [];
  for (let i = 0; i < end; i += 2) {
    const j = i === last ? 0 : i + 2;
    const kept = clipped(xy[i]!, xy[i + 1]!, xy[j]!, xy[j + 1]!, x, y, x + width, y + height);
    if (!kept) continue;
    const run = runs[runs.length - 1];
    const [ax, ay, bx, by] = kept;
    if (run && run[run.length - 2] === ax && run[run.length - 1] === ay) run.push(bx, by);
    else runs.push([ax, ay, bx, by]);
  }
  return runs.map((run) => Float64Array.from(run));
}

/** Liang and Barsky's way of cutting a segment to a window (ACM Transactions on Graphics 3, 1984). */
function clipped(ax: number, ay: number, bx: number, by: number, x0: number, y0: number, x1: number, y1: number): readonly [number, number, number, number] | undefined {
  let from = 0, to = 1;
  for (const [p, q] of [[ax - bx, ax - x0], [bx - ax, x1 - ax], [ay - by, ay - y0], [by - ay, y1 - ay]] as const) {
    if (p === 0 && q < 0) return undefined;
    if (p < 0) from = Math.max(from, q / p);
    if (p > 0) to = Math.min(to, q / p);
  }
  if (from >= to) return undefined;
  const at = (t: number): readonly [number, number] => (t === 0 ? [ax, ay] : t === 1 ? [bx, by] : [ax + t * (bx - ax), ay + t * (by - ay)]);
  return [...at(from), ...at(to)];
}

/** A ring cut to a window, side after side (Sutherland and Hodgman, Communications of the ACM 17, 1974). */
export function ringIn(xy: Float64Array, { x, y, width, height }: Window): Float64Array {
  const sides: readonly ((px: number, py: number) => number)[] = [(px) => px - x, (px) => x + width - px, (_, py) => py - y, (_, py) => y + height - py];
  let ring = Array.from(xy);
  for (const over of sides) {
    const kept: number[] = [];
    for (let i = 0; i < ring.length; i += 2) {
      const j = (i + 2) % ring.length;
      const [ax, ay, bx, by] = [ring[i]!, ring[i + 1]!, ring[j]!, ring[j + 1]!];
      const a = over(ax, ay), b = over(bx, by);
      if (a >= 0) kept.push(ax, ay);
      if (a >= 0 === b >= 0) continue;
      const t = a / (a - b);
      kept.push(ax + t * (bx - ax), ay + t * (by - ay));
    }
    ring = kept;
  }
  return Float64Array.from(ring);
}
