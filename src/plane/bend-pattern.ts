/** Which way a line bends at each of its points: 1 left, −1 right, 0 not said. */
export type BendPattern = Int8Array;

/** A stretch that bends one way. `turn` is signed, radians; `length` mm; `from` is its first point. */
interface Bow {
  readonly from: number;
  readonly turn: number;
  readonly length: number;
}

/** Height of a bow over its chord, mm: turn · length / 8, exact for a shallow arc of a circle. */
const heightOf = ({ turn, length }: Bow): number => (Math.abs(turn) * length) / 8;
/** A bow at the end of an open line leaves what goes before by turn · length / 2, so it goes less easily than one of its height elsewhere. */
const atEnd = 4;

/**
 * The ways a line bends, simpler from one to the next: as it is, then with its flattest bow given to its neighbours, and so on
 * while a bow is flatter than `flattestMm`. `turns` in radians, one a point, points `step` mm apart; a ring closes on itself.
 */
export function bendPatterns(turns: Float64Array, step: number, closed: boolean, flattestMm: number): readonly BendPattern[] {
  const n = turns.length;
  let bows = bowsOf(turns, step, closed);
  const patterns = [patternOf(bows, n)];
  // A ring of one bow has no other to take it up, one of two has always both.
  while (bows.length > (closed ? 2 : 1)) {
    const heights = bows.map((bow, i) => heightOf(bow) * (!closed && (i === 0 || i === bows.length - 1) ? atEnd : 1));
    const k = heights.indexOf(Math.min(...heights));
    if (heightOf(bows[k]!) >= flattestMm) break;
    bows = closed ? withoutBow(turned(bows, k), 1, n).sort((a, b) => a.from - b.from) : withoutBow(bows, k, n);
    patterns.push(patternOf(bows, n));
  }
  return patterns;
}

function bowsOf(turns: Float64Array, step: number, closed: boolean): Bow[] {
  const bows: { from: number; turn: number; length: number }[] = [];
  for (let i = 0; i < turns.length; i++) {
    const last = bows[bows.length - 1];
    const turn = turns[i]!;
    if (last && (turn === 0 || last.turn === 0 || last.turn > 0 === turn > 0)) {
      last.turn += turn;
      last.length += step;
    } else bows.push({ from: i, turn, length: step });
  }
  const [first, last] = [bows[0], bows[bows.length - 1]];
  if (closed && first && last && bows.length > 1 && first.turn > 0 === last.turn > 0) {
    bows.shift();
    last.turn += first.turn;
    last.length += first.length;
  }
  return bows;
}

/** A ring's bows begun so that bow k is the second. */
function turned(bows: readonly Bow[], k: number): Bow[] {
  const start = (k + bows.length - 1) % bows.length;
  return [...bows.slice(start), ...bows.slice(0, start)];
}

/** Bow k and its neighbours made one. */
function withoutBow(bows: readonly Bow[], k: number, n: number): Bow[] {
  const from = Math.max(0, k - 1);
  const parts = bows.slice(from, k + 2);
  const one = { from: parts[0]!.from % n, turn: parts.reduce((a, b) => a + b.turn, 0), length: parts.reduce((a, b) => a + b.length, 0) };
  return [...bows.slice(0, from), one, ...bows.slice(k + 2)];
}

function patternOf(bows: readonly Bow[], n: number): BendPattern {
  const pattern = new Int8Array(n);
  bows.forEach(({ from, turn }, k) => {
    const next = bows[(k + 1) % bows.length]!.from;
    const count = bows.length === 1 ? n : (next - from + n) % n;
    for (let i = 0; i < count; i++) pattern[(from + i) % n] = Math.sign(turn);
  });
  return pattern;
}
