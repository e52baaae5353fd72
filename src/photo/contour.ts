/** A closed loop in cells, x0 y0 x1 y1 …, what is above the level on its left (counter-clockwise round an island, y up). */
export type Loop = Float64Array;

/**
 * All loops along which a field crosses a level, between the cells by linear interpolation (marching squares). Outside the
 * field all is below the level. Cell (i, j) is at `values[j · width + i]`.
 */
export function loopsAt(values: Float32Array, width: number, height: number, level: number): Loop[] {
  // One ring of cells below the level around the field closes every loop.
  const wide = width + 2, high = height + 2;
  const at = (i: number, j: number): number => (i < 1 || j < 1 || i > width || j > height ? level - 1 : values[(j - 1) * width + i - 1]!);
  // Crossings are numbered by the side they lie on: 2k on the side from cell k to its right, 2k + 1 to the cell above.
  const next = new Int32Array(2 * wide * high).fill(-1);
  const starts: number[] = [];
  for (let j = 0; j + 1 < high; j++) {
    for (let i = 0; i + 1 < wide; i++) {
      const a = at(i, j), b = at(i + 1, j), c = at(i + 1, j + 1), d = at(i, j + 1);
      const shape = (a > level ? 1 : 0) | (b > level ? 2 : 0) | (c > level ? 4 : 0) | (d > level ? 8 : 0);
      if (shape === 0 || shape === 15) continue;
      const k = j * wide + i;
      const sides = [2 * k, 2 * (k + 1) + 1, 2 * (k + wide), 2 * k + 1] as const;
      for (const [from, to] of stepsOf(shape, (a + b + c + d) / 4 > level)) {
        next[sides[from]!] = sides[to]!;
        starts.push(sides[from]!);
      }
    }
  }
  const place = (side: number): [number, number] => {
    const k = side >> 1, i = k % wide, j = Math.floor(k / wide);
    const [u, v] = side % 2 === 0 ? [i + 1, j] : [i, j + 1];
    const from = at(i, j), to = at(u, v);
    const t = (level - from) / (to - from);
    return [i - 1 + t * (u - i), j - 1 + t * (v - j)];
  };
  const loops: Loop[] = [];
  for (const start of starts) {
    if (next[start] === -1) continue;
    const xy: number[] = [];
    for (let side = start; next[side] !== -1; ) {
      xy.push(...place(side));
      const after = next[side]!;
      next[side] = -1;
      side = after;
    }
    loops.push(Float64Array.from(xy));
  }
  return loops;
}

/** Signed area of a loop, cells². */
export function areaOf(xy: Float64Array): number {
  let twice = 0;
  const n = xy.length;
  for (let i = 0; i < n; i += 2) twice += xy[i]! * xy[(i + 3) % n]! - xy[(i + 2) % n]! * xy[i + 1]!;
  return twice / 2;
}

/** The loop that encloses most; undefined where there is none. */
export function largestLoop(loops: readonly Loop[]): Loop | undefined {
  return loops.reduce<Loop | undefined>((a, b) => (a === undefined || areaOf(b) > areaOf(a) ? b : a), undefined);
}

/** Steps through a square, as sides (0 lower, 1 right, 2 upper, 3 left) with what is above the level on the left. */
function stepsOf(shape: number, middleAbove: boolean): readonly (readonly [number, number])[] {
  switch (shape) {
    case 1: return [[0, 3]];
    case 2: return [[1, 0]];
    case 3: return [[1, 3]];
    case 4: return [[2, 1]];
    case 5: return middleAbove ? [[0, 1], [2, 3]] : [[0, 3], [2, 1]];
    case 6: return [[2, 0]];
    case 7: return [[2, 3]];
    case 8: return [[3, 2]];
    case 9: return [[0, 2]];
    case 10: return middleAbove ? [[1, 2], [3, 0]] : [[1, 0], [3, 2]];
    case 11: return [[1, 2]];
    case 12: return [[3, 1]];
    case 13: return [[0, 1]];
    default: return [[3, 0]];
  }
}
