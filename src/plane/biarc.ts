/** Arcs after a start, each `x y bulge`: its end, and the tangent of a quarter of its angle, positive to the left. */
export type Arcs = number[];

/** An arc whose sagittas from either end's direction differ by less is one arc, mm. */
const sameMm = 1e-6;
const mostPairs = 64;

/**
 * A cubic Bézier as circular arcs that run on without a kink, none farther from it than `withinMm`: pairs of arcs over even parts of the
 * parameter, as few as hold. A pair between two points with given directions: both handles to the joint are equally long
 * (K. M. Bolton, Biarc curves, Computer-Aided Design 7, 1975).
 */
export function pushArcs(out: Arcs, x0: number, y0: number, x1: number, y1: number, x2: number, y2: number, x3: number, y3: number, withinMm: number): void {
  const cubic = [x0, y0, x1, y1, x2, y2, x3, y3] as const;
  for (let pairs = 1; ; ) {
    const arcs: Arcs = [];
    const off = pairsOf(arcs, cubic, pairs);
    if (off <= withinMm || pairs >= mostPairs) {
      out.push(...arcs);
      return;
    }
    pairs = Math.min(mostPairs, morePairs(pairs, off / withinMm));
  }
}

/** At least one more; the error falls with the cube of the length. */
function morePairs(pairs: number, tooFar: number): number {
  let more = pairs + 1;
  const cube = pairs * pairs * pairs * tooFar;
  while ((more + 1) * (more + 1) * (more + 1) <= cube) more++;
  return more;
}

type Cubic = readonly [number, number, number, number, number, number, number, number];
interface Station {
  readonly x: number;
  readonly y: number;
  /** Unit direction of travel. */
  readonly dx: number;
  readonly dy: number;
}

/** The pairs over even parts; returns how far they pass from the cubic. */
function pairsOf(out: Arcs, cubic: Cubic, pairs: number): number {
  let worst = 0;
  let from = stationAt(cubic, 0);
  for (let k = 0; k < pairs; k++) {
    const to = stationAt(cubic, (k + 1) / pairs);
    const first = out.length;
    const [mx, my] = pushPair(out, from, to);
    const single = out.length - first === 3;
    for (let i = 1; i < 8; i++) {
      const { x, y, dx, dy } = stationAt(cubic, (k + i / 8) / pairs);
      const beyond = !single && (x - mx) * dx + (y - my) * dy > 0;
      const off = single ? offArc(x, y, from.x, from.y, to.x, to.y, out[first + 2]!)
        : beyond ? offArc(x, y, mx, my, to.x, to.y, out[first + 5]!) : offArc(x, y, from.x, from.y, mx, my, out[first + 2]!);
      if (off > worst) worst = off;
    }
    from = to;
  }
  return worst;
}

function stationAt([x0, y0, x1, y1, x2, y2, x3, y3]: Cubic, t: number): Station {
  const s = 1 - t;
  const b0 = s * s * s, b1 = 3 * s * s * t, b2 = 3 * s * t * t, b3 = t * t * t;
  const c0 = s * s, c1 = 2 * s * t, c2 = t * t;
  const vx = c0 * (x1 - x0) + c1 * (x2 - x1) + c2 * (x3 - x2), vy = c0 * (y1 - y0) + c1 * (y2 - y1) + c2 * (y3 - y2);
  const d = Math.sqrt(vx * vx + vy * vy) || 1;
  if (t === 0) return { x: x0, y: y0, dx: vx / d, dy: vy / d };
  if (t === 1) return { x: x3, y: y3, dx: vx / d, dy: vy / d };
  return { x: b0 * x0 + b1 * x1 + b2 * x2 + b3 * x3, y: b0 * y0 + b1 * y1 + b2 * y2 + b3 * y3, dx: vx / d, dy: vy / d };
}

/** One arc where one does, else two; returns where they meet. */
function pushPair(out: Arcs, a: Station, b: Station): readonly [number, number] {
  const vx = b.x - a.x, vy = b.y - a.y;
  const square = vx * vx + vy * vy;
  const leaving = bulgeOf(a.dx, a.dy, vx, vy), arriving = bulgeOf(vx, vy, b.dx, b.dy);
  if (Math.abs(leaving - arriving) * Math.sqrt(square) <= 2 * sameMm) {
    out.push(b.x, b.y, (leaving + arriving) / 2);
    return [b.x, b.y];
  }
  const along = vx * (a.dx + b.dx) + vy * (a.dy + b.dy);
  const apart = 2 * (1 - (a.dx * b.dx + a.dy * b.dy));
  const handle = square / (along + Math.sqrt(along * along + apart * square));
  const mx = (a.x + b.x + handle * (a.dx - b.dx)) / 2, my = (a.y + b.y + handle * (a.dy - b.dy)) / 2;
  out.push(mx, my, bulgeOf(a.dx, a.dy, mx - a.x, my - a.y), b.x, b.y, bulgeOf(b.x - mx, b.y - my, b.dx, b.dy));
  return [mx, my];
}

/** Tan of half the angle from u to v: for an arc's end direction and its chord, of a quarter of the arc's angle. */
function bulgeOf(ux: number, uy: number, vx: number, vy: number): number {
  const both = Math.sqrt((ux * ux + uy * uy) * (vx * vx + vy * vy));
  return both > 0 ? (ux * vy - uy * vx) / (both + ux * vx + uy * vy) : 0;
}

/** Distance of a point near an arc from its circle, by the circle's equation over its slope; straight ones are no exception. */
function offArc(x: number, y: number, ax: number, ay: number, bx: number, by: number, bulge: number): number {
  const dx = bx - ax, dy = by - ay;
  const chord = Math.sqrt(dx * dx + dy * dy) || 1;
  const px = x - (ax + bx) / 2, py = y - (ay + by) / 2;
  const u = (px * dx + py * dy) / chord, w = (px * dy - py * dx) / chord;
  const h = (bulge * chord) / 2, half = (chord * chord) / 4;
  return Math.abs(h * (u * u + w * w - half) + w * (half - h * h)) / (h * h + half);
}
