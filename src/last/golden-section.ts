/** Where a convex function is least within ± reach, by golden section (Kiefer 1953, from memory): each step leaves 0.618 of the range. */
export function leastWithin(value: (x: number) => number, reach: number, steps: number): { readonly at: number; readonly value: number } {
  const share = (Math.sqrt(5) - 1) / 2;
  let [low, high] = [-reach, reach];
  let [c, d] = [high - share * (high - low), low + share * (high - low)];
  let [vc, vd] = [value(c), value(d)];
  for (let k = 0; k < steps; k++) {
    if (vc <= vd) {
      [high, d, vd] = [d, c, vc];
      c = high - share * (high - low);
      vc = value(c);
    } else {
      [low, c, vc] = [c, d, vd];
      d = low + share * (high - low);
      vd = value(d);
    }
  }
  return vc <= vd ? { at: c, value: vc } : { at: d, value: vd };
}
