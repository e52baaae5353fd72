/** A point well inside a closed outline (x0 y0 …) and its distance to the edge: the best of a grid of places, then of finer ones. */
export function insidePoint(xy: Float64Array): { readonly x: number; readonly y: number; readonly room: number } {
  let [x0, x1, y0, y1] = [Infinity, -Infinity, Infinity, -Infinity];
  for (let i = 0; i < xy.length; i += 2) {
    x0 = Math.min(x0, xy[i]!);
    x1 = Math.max(x1, xy[i]!);
    y0 = Math.min(y0, xy[i + 1]!);
    y1 = Math.max(y1, xy[i + 1]!);
  }
  let best = { x: (x0 + x1) / 2, y: (y0 + y1) / 2, room: -Infinity };
  let [halfX, halfY] = [(x1 - x0) / 2, (y1 - y0) / 2];
  for (let round = 0; round < 3; round++) {
    const { x: cx, y: cy } = best;
    for (let i = -places; i <= places; i++) {
      for (let j = -places; j <= places; j++) {
        const x = cx + (halfX * i) / places;
        const y = cy + (halfY * j) / places;
        const room = roomAt(xy, x, y);
        if (room > best.room) best = { x, y, room };
      }
    }
    halfX /= places;
    halfY /= places;
  }
  return best;
}

const places = 9;

/** Distance to the nearest edge; negative outside. */
function roomAt(xy: Float64Array, x: number, y: number): number {
  let least = Infinity;
  let inside = false;
  for (let i = 0, j = xy.length - 2; i < xy.length; j = i, i += 2) {
    const [ax, ay, bx, by] = [xy[j]!, xy[j + 1]!, xy[i]!, xy[i + 1]!];
    const [dx, dy] = [bx - ax, by - ay];
    const t = Math.max(0, Math.min(1, ((x - ax) * dx + (y - ay) * dy) / (dx * dx + dy * dy || 1)));
    least = Math.min(least, Math.hypot(x - ax - t * dx, y - ay - t * dy));
    if (ay > y !== by > y && x < ax + ((y - ay) / dy) * dx) inside = !inside;
  }
  return inside ? least : -least;
}
