/**
 * Takes the noise off a traced loop and keeps its corners. Points `stepMm` apart along the loop are moved on to the parabola
 * that fits their neighbourhood; no neighbourhood reaches across a corner, and a corner is where the lines on its two sides meet.
 */
export interface SmoothOptions {
  readonly stepMm: number;
  /** Half the neighbourhood, mm along the loop. */
  readonly reachMm: number;
}

/** A turn of more than this within the reach is a corner. */
const cornerDeg = 35;

export function smoothLoop(xy: Float64Array, { stepMm, reachMm }: SmoothOptions): Float64Array {
  const fine = evenly(xy, stepMm / 4);
  const n = fine.length / 2;
  const step = lengthOf(fine) / n;
  const reach = Math.max(2, Math.round(reachMm / step));
  if (n < 6 * reach) return fine;
  const corners = cornersOf(fine, reach);
  if (corners.length === 0) {
    const out: number[] = [];
    for (let k = 0; k < n; k += 4) out.push(...fitted(fine, k, -reach, reach));
    return Float64Array.from(out);
  }
  const out: number[] = [];
  corners.forEach((corner, c) => {
    const after = corners[(c + 1) % corners.length]!;
    const before = corners[(c + corners.length - 1) % corners.length]!;
    const gap = (from: number, to: number): number => ((to - from + n - 1) % n) + 1;
    const length = gap(corner, after);
    out.push(...cornerAt(fine, corner, Math.min(reach, gap(before, corner) >> 1), Math.min(reach, length >> 1)));
    for (let k = 4; k < length - 1; k += 4) {
      // One cell's width beside the corner is blurred by it.
      const low = Math.max(-reach, 2 - k), high = Math.min(reach, length - 2 - k);
      out.push(...(high - low < 4 ? [fine[2 * ((corner + k) % n)]!, fine[2 * ((corner + k) % n) + 1]!] : fitted(fine, corner + k, low, high)));
    }
  });
  return Float64Array.from(out);
}

/** Points at equal distances along the loop, starting at its first. */
export function evenly(xy: Float64Array, step: number): Float64Array {
  const total = lengthOf(xy);
  const n = Math.max(8, Math.round(total / step));
  const out = new Float64Array(2 * n);
  const m = xy.length / 2;
  let at = 0, before = 0;
  for (let k = 0; k < n; k++) {
    const want = (k * total) / n;
    for (;;) {
      const i = 2 * at, j = 2 * ((at + 1) % m);
      const dx = xy[j]! - xy[i]!, dy = xy[j + 1]! - xy[i + 1]!;
      const long = Math.sqrt(dx * dx + dy * dy);
      if (before + long >= want || at === m - 1) {
        const t = long > 0 ? Math.min(1, (want - before) / long) : 0;
        out[2 * k] = xy[i]! + t * dx;
        out[2 * k + 1] = xy[i + 1]! + t * dy;
        break;
      }
      before += long;
      at++;
    }
  }
  return out;
}

function lengthOf(xy: Float64Array): number {
  let sum = 0;
  for (let i = 0; i < xy.length; i += 2) {
    const j = (i + 2) % xy.length;
    sum += Math.sqrt((xy[j]! - xy[i]!) ** 2 + (xy[j + 1]! - xy[i + 1]!) ** 2);
  }
  return sum;
}

/** Places where the way in and the way out, each a reach long, turn most and by more than a corner's least. */
function cornersOf(xy: Float64Array, reach: number): number[] {
  const n = xy.length / 2;
  const turn = new Float64Array(n);
  const limit = Math.cos((cornerDeg * Math.PI) / 180);
  for (let k = 0; k < n; k++) {
    const a = 2 * ((k - reach + n) % n), b = 2 * k, c = 2 * ((k + reach) % n);
    const ux = xy[b]! - xy[a]!, uy = xy[b + 1]! - xy[a + 1]!, vx = xy[c]! - xy[b]!, vy = xy[c + 1]! - xy[b + 1]!;
    turn[k] = (ux * vx + uy * vy) / Math.sqrt((ux * ux + uy * uy) * (vx * vx + vy * vy) + 1e-30);
  }
  const out: number[] = [];
  for (let k = 0; k < n; k++) {
    if (turn[k]! > limit) continue;
    let sharpest = true;
    for (let d = 1; d <= reach && sharpest; d++) sharpest = turn[k]! <= turn[(k - d + n) % n]! && turn[k]! < turn[(k + d) % n]!;
    if (sharpest) out.push(k);
  }
  return out;
}

/** Point k on the parabola through its neighbourhood `low … high`, in steps along the loop. */
function fitted(xy: Float64Array, k: number, low: number, high: number): [number, number] {
  const n = xy.length / 2;
  let s1 = 0, s2 = 0, s3 = 0, s4 = 0, x0 = 0, x1 = 0, x2 = 0, y0 = 0, y1 = 0, y2 = 0;
  const s0 = high - low + 1;
  const scale = 1 / Math.max(1, high - low);
  for (let d = low; d <= high; d++) {
    const t = d * scale, i = 2 * ((((k + d) % n) + n) % n);
    const x = xy[i]!, y = xy[i + 1]!;
    s1 += t;
    s2 += t * t;
    s3 += t * t * t;
    s4 += t * t * t * t;
    x0 += x;
    x1 += t * x;
    x2 += t * t * x;
    y0 += y;
    y1 += t * y;
    y2 += t * t * y;
  }
  // Cramer's rule on the 3 × 3 normal system, for the value at k alone.
  const det = s0 * (s2 * s4 - s3 * s3) - s1 * (s1 * s4 - s2 * s3) + s2 * (s1 * s3 - s2 * s2);
  const solve = (b0: number, b1: number, b2: number): number => (b0 * (s2 * s4 - s3 * s3) - s1 * (b1 * s4 - b2 * s3) + s2 * (b1 * s3 - b2 * s2)) / det;
  return [solve(x0, x1, x2), solve(y0, y1, y2)];
}

/** Where straight lines through both sides of a corner meet; the traced point where they do not meet near it. */
function cornerAt(xy: Float64Array, k: number, before: number, after: number): [number, number] {
  const n = xy.length / 2;
  const traced: [number, number] = [xy[2 * k]!, xy[2 * k + 1]!];
  const a = lineThrough(xy, k, -before, -Math.max(1, before >> 2)), b = lineThrough(xy, k, Math.max(1, after >> 2), after);
  if (!a || !b) return traced;
  const cross = a.dx * b.dy - a.dy * b.dx;
  if (Math.abs(cross) < 0.2) return traced;
  const t = ((b.x - a.x) * b.dy - (b.y - a.y) * b.dx) / cross;
  const x = a.x + t * a.dx, y = a.y + t * a.dy;
  // Blur takes a few tenths off a corner, never more than the neighbourhood is long.
  const far = (x - traced[0]) ** 2 + (y - traced[1]) ** 2;
  const i = 2 * ((k + after) % n);
  return far < ((xy[i]! - traced[0]) ** 2 + (xy[i + 1]! - traced[1]) ** 2) / 4 ? [x, y] : traced;
}

/** Straight line through the points k + low … k + high by their middle and main direction. */
function lineThrough(xy: Float64Array, k: number, low: number, high: number): { x: number; y: number; dx: number; dy: number } | undefined {
  const n = xy.length / 2, count = high - low + 1;
  if (count < 3) return undefined;
  let x = 0, y = 0, xx = 0, xy2 = 0, yy = 0;
  for (let d = low; d <= high; d++) {
    const i = 2 * ((((k + d) % n) + n) % n);
    x += xy[i]! / count;
    y += xy[i + 1]! / count;
  }
  for (let d = low; d <= high; d++) {
    const i = 2 * ((((k + d) % n) + n) % n);
    xx += (xy[i]! - x) ** 2;
    yy += (xy[i + 1]! - y) ** 2;
    xy2 += (xy[i]! - x) * (xy[i + 1]! - y);
  }
  // Main direction of a symmetric 2 × 2 matrix without angles.
  const half = (xx - yy) / 2, root = Math.sqrt(half * half + xy2 * xy2);
  const [vx, vy] = half > 0 ? [half + root, xy2] : [xy2, root - half];
  const long = Math.sqrt(vx * vx + vy * vy);
  return long > 0 ? { x, y, dx: vx / long, dy: vy / long } : undefined;
}
