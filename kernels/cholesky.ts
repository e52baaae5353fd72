// AssemblyScript twin of src/solve/cholesky.ts and src/solve/dense.ts: the same sums in the same order, two rows a lane, so that
// both give the same bits. Compiled by `node tools/kernels.mjs` into src/solve/kernel-bytes.ts; a test holds the two together.
// All addresses are bytes in the one memory that the caller lays out; plan arrays hold 32-bit integers as in front-plan.ts.

// Numbers of one front, in bytes (FRONT of front-plan.ts).
const FIRST: usize = 0;
const WIDTH: usize = 4;
const BELOW: usize = 8;
const PANEL: usize = 12;
const UPDATE: usize = 16;
const ROWS: usize = 20;
const CHILD: usize = 28;
const SIBLING: usize = 32;
const IN_PANEL: usize = 36;
const BLOCKS: usize = 40;
const STRIDE: usize = 44;

// @ts-ignore: decorator
@inline
function int(at: usize): i32 {
  return load<i32>(at);
}

// @ts-ignore: decorator
@inline
function entry(heap: usize, index: i32): usize {
  return heap + ((<usize>index) << 3);
}

/** As Cholesky.factor; -1, or the place (in the order of elimination) of the pivot that is not positive. */
export function factor(count: i32, block: i32, heap: usize, fronts: usize, relative: usize, blocks: usize, blocksEnd: usize, values: usize): i32 {
  for (let s = 0, f = fronts; s < count; s++, f += STRIDE) {
    const width = int(f + WIDTH);
    const below = int(f + BELOW);
    const tall = width + below;
    const down: usize = (<usize>tall) << 3;
    const panel = entry(heap, int(f + PANEL));
    const update = entry(heap, int(f + UPDATE));
    memory.fill(panel, 0, down * width);
    const to = s + 1 < count ? blocks + 12 * <usize>int(f + STRIDE + BLOCKS) : blocksEnd;
    loadBlocks(block, heap, blocks + 12 * <usize>int(f + BLOCKS), to, values, down);
    for (let c = int(f + CHILD); c >= 0; c = int(fronts + STRIDE * c + SIBLING)) addToPanel(block, heap, fronts + STRIDE * c, relative, panel, down);
    const failed = factorTriangle(panel, down, width);
    if (failed >= 0) return int(f + FIRST) + failed;
    if (below == 0) continue;
    solveColumns(panel, down, width, tall, 0, width);
    negativeOuter(panel + ((<usize>width) << 3), down, width, below, update);
    for (let c = int(f + CHILD); c >= 0; c = int(fronts + STRIDE * c + SIBLING)) addToUpdate(block, heap, fronts + STRIDE * c, relative, width, update, below);
  }
  return -1;
}

function loadBlocks(block: i32, heap: usize, from: usize, to: usize, values: usize, down: usize): void {
  for (let k = from; k < to; k += 12) {
    const v = entry(values, int(k));
    const t = entry(heap, int(k + 4));
    store<f64>(t, load<f64>(v));
    if (block == 1) continue;
    const turned: usize = (<usize>int(k + 8)) << 3;
    store<f64>(t + down, load<f64>(v + 8 + turned));
    store<f64>(t + 8, load<f64>(v + 16 - turned));
    store<f64>(t + down + 8, load<f64>(v + 24));
  }
}

function addToPanel(block: i32, heap: usize, child: usize, relative: usize, panel: usize, down: usize): void {
  const rows = int(child + BELOW);
  const places = relative + ((<usize>int(child + ROWS)) << 2);
  const inPanel = int(child + IN_PANEL);
  const step: usize = (<usize>rows) << 3;
  let from = entry(heap, int(child + UPDATE));
  for (let j = 0; j < inPanel; j++, from += step) addRun(block, panel + down * int(places + ((<usize>j) << 2)), from, places, j, rows);
}

function addToUpdate(block: i32, heap: usize, child: usize, relative: usize, width: i32, update: usize, below: i32): void {
  const rows = int(child + BELOW);
  const places = relative + ((<usize>int(child + ROWS)) << 2);
  const inPanel = int(child + IN_PANEL);
  const step: usize = (<usize>rows) << 3;
  const down: usize = (<usize>below) << 3;
  const over: usize = (<usize>width) << 3;
  let from = entry(heap, int(child + UPDATE)) + step * inPanel;
  for (let j = inPanel; j < rows; j++, from += step) addRun(block, update + down * (int(places + ((<usize>j) << 2)) - width) - over, from, places, j, rows);
}

function addRun(block: i32, to: usize, from: usize, places: usize, first: i32, last: i32): void {
  if (block == 1) {
    for (let i = first; i < last; i++) {
      const row = entry(to, int(places + ((<usize>i) << 2)));
      store<f64>(row, load<f64>(row) + load<f64>(entry(from, i)));
    }
    return;
  }
  for (let i = first & -2; i < last; i += 2) {
    const row = entry(to, int(places + ((<usize>i) << 2)));
    v128.store(row, v128.add<f64>(v128.load(row), v128.load(entry(from, i))));
  }
}

/** As solveColumns of dense.ts. */
function solveColumns(panel: usize, down: usize, from: i32, to: i32, first: i32, last: i32): void {
  let i = from;
  for (; i + 4 <= to; i += 4) {
    let j = first;
    for (; j + 2 <= last; j += 2) {
      let c = entry(panel, j);
      let r = entry(panel, i);
      const end = r + down * j;
      let a0 = v128.splat<f64>(0), a1 = a0, b0 = a0, b1 = a0;
      for (; r < end; c += down, r += down) {
        const x = v128.load_splat<f64>(c);
        const y = v128.load_splat<f64>(c, 8);
        const p = v128.load(r);
        const q = v128.load(r, 16);
        a0 = v128.add<f64>(a0, v128.mul<f64>(p, x));
        a1 = v128.add<f64>(a1, v128.mul<f64>(p, y));
        b0 = v128.add<f64>(b0, v128.mul<f64>(q, x));
        b1 = v128.add<f64>(b1, v128.mul<f64>(q, y));
      }
      const u = v128.load_splat<f64>(c);
      const v = v128.load_splat<f64>(c, 8);
      const w = v128.load_splat<f64>(c + down, 8);
      const z = r + down;
      const a = v128.mul<f64>(v128.sub<f64>(v128.load(r), a0), u);
      const b = v128.mul<f64>(v128.sub<f64>(v128.load(r, 16), b0), u);
      v128.store(r, a);
      v128.store(r, b, 16);
      v128.store(z, v128.mul<f64>(v128.sub<f64>(v128.sub<f64>(v128.load(z), a1), v128.mul<f64>(a, v)), w));
      v128.store(z, v128.mul<f64>(v128.sub<f64>(v128.sub<f64>(v128.load(z, 16), b1), v128.mul<f64>(b, v)), w), 16);
    }
    if (j < last) for (let r = 0; r < 4; r++) solveRow(panel, down, i + r, j, last);
  }
  for (; i < to; i++) solveRow(panel, down, i, first, last);
}

function solveRow(panel: usize, down: usize, i: i32, first: i32, last: i32): void {
  let j = first;
  for (; j + 2 <= last; j += 2) {
    let c = entry(panel, j);
    let r = entry(panel, i);
    const end = r + down * j;
    let sums = v128.splat<f64>(0);
    for (; r < end; c += down, r += down) sums = v128.add<f64>(sums, v128.mul<f64>(v128.load_splat<f64>(r), v128.load(c)));
    const a = (load<f64>(r) - v128.extract_lane<f64>(sums, 0)) * load<f64>(c);
    store<f64>(r, a);
    const z = r + down;
    store<f64>(z, (load<f64>(z) - v128.extract_lane<f64>(sums, 1) - a * load<f64>(c + 8)) * load<f64>(c + down + 8));
  }
  if (j == last) return;
  let c = entry(panel, j);
  let r = entry(panel, i);
  const end = r + down * j;
  let sum: f64 = 0;
  for (; r < end; c += down, r += down) sum += load<f64>(r) * load<f64>(c);
  store<f64>(r, (load<f64>(r) - sum) * load<f64>(c));
}

/** As factorTriangle of dense.ts. */
function factorTriangle(panel: usize, down: usize, width: i32): i32 {
  for (let j = 0; j < width; j += 2) {
    let c = entry(panel, j);
    const end = c + down * j;
    const pair = j + 1 < width;
    let aa: f64 = 0;
    let ab: f64 = 0;
    let bb: f64 = 0;
    for (; c < end; c += down) {
      const x = load<f64>(c);
      aa += x * x;
      if (!pair) continue;
      const y = load<f64>(c, 8);
      ab += x * y;
      bb += y * y;
    }
    const p = load<f64>(c) - aa;
    if (!(p > 0)) return j;
    const u = 1 / Math.sqrt(p);
    store<f64>(c, u);
    if (!pair) break;
    const v = (load<f64>(c, 8) - ab) * u;
    store<f64>(c, v, 8);
    const q = load<f64>(c + down, 8) - bb - v * v;
    if (!(q > 0)) return j + 1;
    store<f64>(c + down, 1 / Math.sqrt(q), 8);
    solveColumns(panel, down, j + 2, width, j, j + 2);
  }
  return -1;
}

/** As negativeOuterInto of dense.ts, four columns at a time. */
function negativeOuter(p: usize, down: usize, width: i32, m: i32, u: usize): void {
  const over = down * width;
  const step: usize = (<usize>m) << 3;
  let j = 0;
  for (; j + 4 <= m; j += 4) {
    let i = j;
    for (; i + 4 <= m; i += 4) {
      let c = entry(p, j);
      let r = entry(p, i);
      const end = r + over;
      let a0 = v128.splat<f64>(0), a1 = a0, a2 = a0, a3 = a0, b0 = a0, b1 = a0, b2 = a0, b3 = a0;
      for (; r < end; c += down, r += down) {
        const f = v128.load(r);
        const g = v128.load(r, 16);
        const x = v128.load_splat<f64>(c);
        a0 = v128.sub<f64>(a0, v128.mul<f64>(f, x));
        b0 = v128.sub<f64>(b0, v128.mul<f64>(g, x));
        const y = v128.load_splat<f64>(c, 8);
        a1 = v128.sub<f64>(a1, v128.mul<f64>(f, y));
        b1 = v128.sub<f64>(b1, v128.mul<f64>(g, y));
        const z = v128.load_splat<f64>(c, 16);
        a2 = v128.sub<f64>(a2, v128.mul<f64>(f, z));
        b2 = v128.sub<f64>(b2, v128.mul<f64>(g, z));
        const w = v128.load_splat<f64>(c, 24);
        a3 = v128.sub<f64>(a3, v128.mul<f64>(f, w));
        b3 = v128.sub<f64>(b3, v128.mul<f64>(g, w));
      }
      let t = u + step * j + ((<usize>i) << 3);
      v128.store(t, a0);
      v128.store(t, b0, 16);
      t += step;
      v128.store(t, a1);
      v128.store(t, b1, 16);
      t += step;
      v128.store(t, a2);
      v128.store(t, b2, 16);
      t += step;
      v128.store(t, a3);
      v128.store(t, b3, 16);
    }
    for (; i < m; i++) outerRow4(entry(p, i), entry(p, j), down, over, u + step * j + ((<usize>i) << 3), step);
  }
  for (; j < m; j++) for (let i = j; i < m; i++) outerEntry(entry(p, i), entry(p, j), down, over, u + step * j + ((<usize>i) << 3));
}

/** One row against four columns. */
function outerRow4(r: usize, c: usize, down: usize, over: usize, t: usize, step: usize): void {
  let a = v128.splat<f64>(0), b = a;
  for (const end = r + over; r < end; r += down, c += down) {
    const x = v128.load_splat<f64>(r);
    a = v128.sub<f64>(a, v128.mul<f64>(x, v128.load(c)));
    b = v128.sub<f64>(b, v128.mul<f64>(x, v128.load(c, 16)));
  }
  store<f64>(t, v128.extract_lane<f64>(a, 0));
  store<f64>(t + step, v128.extract_lane<f64>(a, 1));
  store<f64>(t + 2 * step, v128.extract_lane<f64>(b, 0));
  store<f64>(t + 3 * step, v128.extract_lane<f64>(b, 1));
}

function outerEntry(r: usize, c: usize, down: usize, over: usize, t: usize): void {
  let sum: f64 = 0;
  for (const end = r + over; r < end; r += down, c += down) sum -= load<f64>(r) * load<f64>(c);
  store<f64>(t, sum);
}

/** As Cholesky.solveInto, on x (b on entry) in place; y is as long as the unknowns and the tallest front's further rows. */
export function solve(count: i32, unknowns: i32, heap: usize, fronts: usize, rows: usize, unknownAt: usize, x: usize, y: usize): void {
  for (let k = 0; k < unknowns; k++) store<f64>(entry(y, k), load<f64>(entry(x, int(unknownAt + ((<usize>k) << 2)))));
  const gathered = entry(y, unknowns);
  forward(count, heap, fronts, rows, y, gathered);
  backward(count, heap, fronts, rows, y, gathered);
  for (let k = 0; k < unknowns; k++) store<f64>(entry(x, int(unknownAt + ((<usize>k) << 2))), load<f64>(entry(y, k)));
}

function forward(count: i32, heap: usize, fronts: usize, rows: usize, y: usize, gathered: usize): void {
  for (let s = 0, f = fronts; s < count; s++, f += STRIDE) {
    const width = int(f + WIDTH);
    const below = int(f + BELOW);
    const even = below & -2;
    const down: usize = (<usize>(width + below)) << 3;
    const own = entry(y, int(f + FIRST));
    const list = rows + ((<usize>int(f + ROWS)) << 2);
    let column = entry(heap, int(f + PANEL));
    memory.fill(gathered, 0, (<usize>below) << 3);
    for (let j = 0; j < width; j++, column += down) {
      const v = load<f64>(entry(own, j)) * load<f64>(entry(column, j));
      store<f64>(entry(own, j), v);
      for (let i = j + 1; i < width; i++) store<f64>(entry(own, i), load<f64>(entry(own, i)) - load<f64>(entry(column, i)) * v);
      const at = entry(column, width);
      const vv = v128.splat<f64>(v);
      for (let i = 0; i < even; i += 2) v128.store(entry(gathered, i), v128.add<f64>(v128.load(entry(gathered, i)), v128.mul<f64>(v128.load(entry(at, i)), vv)));
      if (even < below) store<f64>(entry(gathered, even), load<f64>(entry(gathered, even)) + load<f64>(entry(at, even)) * v);
    }
    for (let i = 0; i < below; i++) {
      const row = entry(y, int(list + ((<usize>i) << 2)));
      store<f64>(row, load<f64>(row) - load<f64>(entry(gathered, i)));
    }
  }
}

function backward(count: i32, heap: usize, fronts: usize, rows: usize, y: usize, gathered: usize): void {
  for (let s = count - 1; s >= 0; s--) {
    const f = fronts + STRIDE * s;
    const width = int(f + WIDTH);
    const below = int(f + BELOW);
    const even = below & -2;
    const down: usize = (<usize>(width + below)) << 3;
    const own = entry(y, int(f + FIRST));
    const list = rows + ((<usize>int(f + ROWS)) << 2);
    for (let i = 0; i < below; i++) store<f64>(entry(gathered, i), load<f64>(entry(y, int(list + ((<usize>i) << 2)))));
    for (let j = width - 1; j >= 0; j--) {
      const column = entry(heap, int(f + PANEL)) + down * j;
      const at = entry(column, width);
      let sums = v128.splat<f64>(0);
      for (let i = 0; i < even; i += 2) sums = v128.add<f64>(sums, v128.mul<f64>(v128.load(entry(at, i)), v128.load(entry(gathered, i))));
      let a = v128.extract_lane<f64>(sums, 0);
      if (even < below) a += load<f64>(entry(at, even)) * load<f64>(entry(gathered, even));
      let sum = a + v128.extract_lane<f64>(sums, 1);
      for (let i = j + 1; i < width; i++) sum += load<f64>(entry(column, i)) * load<f64>(entry(own, i));
      store<f64>(entry(own, j), (load<f64>(entry(own, j)) - sum) * load<f64>(entry(column, j)));
    }
  }
}
