/** Chance that comes out alike on every machine: the same seed gives the same numbers. */
export interface Chance {
  /** Even, from 0 up to but without 1. */
  even(): number;
  /** Normal, mean 0 and standard deviation 1. */
  normal(): number;
}

/**
 * A stream of chance for a seed and the number of a draw, so that draw 7 is the same whether or not draws 0 to 6 were made. Even numbers
 * by a Weyl sequence through two rounds of integer mixing (the finaliser of MurmurHash3, public domain; from memory); normal ones by
 * Marsaglia's polar method (Marsaglia and Bray, SIAM Review 6 (1964) 260).
 */
export function chance(seed: number, draw = 0): Chance {
  let state = (mixed(seed | 0) ^ mixed((draw + 0x5bd1e995) | 0)) | 0;
  const even = (): number => {
    state = (state + 0x9e3779b9) | 0;
    return (mixed(state) >>> 0) / 2 ** 32;
  };
  let spare: number | undefined;
  const normal = (): number => {
    if (spare !== undefined) {
      const kept = spare;
      spare = undefined;
      return kept;
    }
    for (;;) {
      const x = 2 * even() - 1, y = 2 * even() - 1;
      const square = x * x + y * y;
      if (square >= 1 || square === 0) continue;
      const scale = Math.sqrt((-2 * Math.log(square)) / square);
      spare = y * scale;
      return x * scale;
    }
  };
  return { even, normal };
}

function mixed(word: number): number {
  let h = word;
  h = Math.imul(h ^ (h >>> 16), 0x85ebca6b);
  h = Math.imul(h ^ (h >>> 13), 0xc2b2ae35);
  return h ^ (h >>> 16);
}
