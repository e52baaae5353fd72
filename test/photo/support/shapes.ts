// Outlines of our own for the tests of pictures; mm.

/** A half of a taped pump as it may lie flat, about 240 × 95 mm, with open slits along the toe; x0 y0 …, counter-clockwise. */
export function tapedHalf(atX: number, atY: number, turnDeg = 0): Float64Array {
  const xy: number[] = [];
  // Feather edge from heel to toe, bowed, with slits that open downward.
  for (let k = 0; k <= 80; k++) {
    const t = k / 80;
    const x = 230 * t, y = 26 * Math.sin(Math.PI * t) * (1 - 0.35 * t) - 4 * Math.sin(3 * Math.PI * t);
    xy.push(x, y);
    if ([58, 63, 68, 73].includes(k)) xy.push(x + 0.4, y + 18, x + 0.9, y + 18, x + 2.6, y + 0.4);
  }
  // Centre line up from the toe, topline back to the heel, back curve down.
  for (let k = 1; k <= 24; k++) xy.push(230 - 62 * (k / 24) + 6 * Math.sin((Math.PI * k) / 24), 62 * (k / 24));
  for (let k = 1; k <= 50; k++) xy.push(168 - 172 * (k / 50), 62 + 14 * (k / 50) - 30 * Math.sin((Math.PI * k) / 50) * (0.4 + 0.6 * (k / 50)));
  for (let k = 1; k < 20; k++) xy.push(-4 - 5 * Math.sin((Math.PI * k) / 20) + 4 * (k / 20), 76 * (1 - k / 20));
  return placed(xy, atX, atY, turnDeg);
}

/** A right-angled strip, 230 × 20 mm: its length is what is measured. */
export const strip = (atX: number, atY: number, turnDeg = 0): Float64Array => placed([0, 0, 230, 0, 230, 20, 0, 20], atX, atY, turnDeg);

/** A drawing round a last: smooth, 250 × 85 mm. */
export function soleLine(atX: number, atY: number, turnDeg = 0): Float64Array {
  const xy: number[] = [];
  for (let k = 0; k < 400; k++) {
    const a = (2 * Math.PI * k) / 400;
    xy.push(125 * Math.cos(a), 36 * Math.sin(a) * (1 + 0.18 * Math.cos(a)) + 7 * Math.cos(2 * a));
  }
  return placed(xy, atX, atY, turnDeg);
}

function placed(xy: readonly number[], atX: number, atY: number, turnDeg: number): Float64Array {
  const [c, s] = [Math.cos((turnDeg * Math.PI) / 180), Math.sin((turnDeg * Math.PI) / 180)];
  return Float64Array.from(xy, (v, i) => (i % 2 === 0 ? atX + c * v - s * xy[i + 1]! : atY + s * xy[i - 1]! + c * v));
}

/** Distances of the points of one outline from another, both ways: root mean square and greatest. */
export function apart(a: Float64Array, b: Float64Array): { rms: number; max: number } {
  const far = [...distances(a, b), ...distances(b, a)];
  return { rms: Math.sqrt(far.reduce((s, d) => s + d * d, 0) / far.length), max: Math.max(...far) };
}

function distances(points: Float64Array, outline: Float64Array): number[] {
  const out: number[] = [];
  const n = outline.length;
  const fine: number[] = [];
  for (let i = 0; i < points.length; i += 2) {
    const [x0, y0, x1, y1] = [points[i]!, points[i + 1]!, points[(i + 2) % points.length]!, points[(i + 3) % points.length]!];
    const parts = Math.max(1, Math.ceil(Math.hypot(x1 - x0, y1 - y0)));
    for (let p = 0; p < parts; p++) fine.push(x0 + ((x1 - x0) * p) / parts, y0 + ((y1 - y0) * p) / parts);
  }
  for (let p = 0; p < fine.length; p += 2) {
    let best = Infinity;
    for (let i = 0; i < n; i += 2) {
      const [ax, ay] = [outline[i]!, outline[i + 1]!];
      const dx = outline[(i + 2) % n]! - ax, dy = outline[(i + 3) % n]! - ay;
      const t = Math.max(0, Math.min(1, ((fine[p]! - ax) * dx + (fine[p + 1]! - ay) * dy) / (dx * dx + dy * dy + 1e-12)));
      best = Math.min(best, (fine[p]! - ax - t * dx) ** 2 + (fine[p + 1]! - ay - t * dy) ** 2);
    }
    out.push(Math.sqrt(best));
  }
  return out;
}
