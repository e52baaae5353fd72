/** A neighbour nearer than this along the line says little of its direction, mm. */
const reachMm = 0.4;

/**
 * Unit directions of travel at every point of an open run, x y interleaved: of the circle through the point and one neighbour on
 * either side, at an end through the end and two neighbours. Turned inside out about the point (inversion), that circle is a straight
 * line along the direction sought; so points of a circle give its tangents exactly. Of a closed run the last point is the first.
 */
export function tangentsOf(xy: Float64Array, arc: Float64Array, closed: boolean): Float64Array {
  const last = arc.length - 1;
  const out = new Float64Array(xy.length);
  for (let k = 0; k <= last; k++) {
    const back = closed && k === 0 ? last : k, on = closed && k === last ? 0 : k;
    let a = back - 1, b = on + 1;
    while (a > 0 && arc[back]! - arc[a]! < reachMm) a--;
    while (b < last && arc[b]! - arc[on]! < reachMm) b++;
    if (a < 0) through(out, xy, k, b, beyond(arc, b, 1), -1);
    else if (b > last) through(out, xy, k, a, beyond(arc, a, -1), 1);
    else through(out, xy, k, b, a, -1);
  }
  // At the run's far end both neighbours lie behind, which gives the direction backward.
  return out;
}

/** A second neighbour farther on; the same where the run ends. */
function beyond(arc: Float64Array, from: number, way: 1 | -1): number {
  let k = from;
  while (k + way >= 0 && k + way < arc.length && (k === from || Math.abs(arc[k]! - arc[from]!) < reachMm)) k += way;
  return k;
}

/** Direction at k from the images of its neighbours p and q: from q's to p's, or the other way. */
function through(out: Float64Array, xy: Float64Array, k: number, p: number, q: number, sign: 1 | -1): void {
  const px = xy[2 * p]! - xy[2 * k]!, py = xy[2 * p + 1]! - xy[2 * k + 1]!, qx = xy[2 * q]! - xy[2 * k]!, qy = xy[2 * q + 1]! - xy[2 * k + 1]!;
  const pp = px * px + py * py, qq = qx * qx + qy * qy;
  let dx = px / pp, dy = py / pp;
  if (p !== q) {
    dx -= qx / qq;
    dy -= qy / qq;
  }
  const d = -sign * Math.sqrt(dx * dx + dy * dy);
  out[2 * k] = dx / d;
  out[2 * k + 1] = dy / d;
}
