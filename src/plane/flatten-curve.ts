/**
 * Points of a cubic Bézier after its start, the end with them, so close that no chord lies farther than `withinMm` from the curve:
 * a chord over a share h of the parameter stands off by at most h² · max|B″| / 8, and |B″| ≤ 6 · the greater second difference.
 */
export function pushCubic(out: number[], x0: number, y0: number, x1: number, y1: number, x2: number, y2: number, x3: number, y3: number, withinMm: number): void {
  const ax = x0 - 2 * x1 + x2, ay = y0 - 2 * y1 + y2, bx = x1 - 2 * x2 + x3, by = y1 - 2 * y2 + y3;
  const bend = 6 * Math.sqrt(Math.max(ax * ax + ay * ay, bx * bx + by * by));
  const steps = Math.max(1, Math.ceil(Math.sqrt(bend / (8 * withinMm))));
  for (let k = 1; k < steps; k++) {
    const t = k / steps, s = 1 - t;
    const b0 = s * s * s, b1 = 3 * s * s * t, b2 = 3 * s * t * t, b3 = t * t * t;
    out.push(b0 * x0 + b1 * x1 + b2 * x2 + b3 * x3, b0 * y0 + b1 * y1 + b2 * y2 + b3 * y3);
  }
  out.push(x3, y3);
}

/**
 * Points of a circular arc after its start, the end with them. `bulge` is the tangent of a quarter of its angle, positive to the left
 * of the direction of travel (DXF reference, LWPOLYLINE, group 42); its sagitta is bulge · chord / 2. Halved until it is below `withinMm`.
 */
export function pushArc(out: number[], x0: number, y0: number, x1: number, y1: number, bulge: number, withinMm: number): void {
  const dx = x1 - x0, dy = y1 - y0;
  const sagitta = (Math.abs(bulge) / 2) * Math.sqrt(dx * dx + dy * dy);
  if (sagitta > withinMm) {
    // An arc that bends left lies to the right of its chord.
    const x = (x0 + x1) / 2 + (bulge * dy) / 2, y = (y0 + y1) / 2 - (bulge * dx) / 2;
    const half = bulge / (1 + Math.sqrt(1 + bulge * bulge));
    pushArc(out, x0, y0, x, y, half, withinMm);
    pushArc(out, x, y, x1, y1, half, withinMm);
  } else out.push(x1, y1);
}
