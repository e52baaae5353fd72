export interface Place {
  readonly x: number;
  readonly y: number;
}
/** What words must not cover: a point of a line, or the ring of a handle. */
export interface InTheWay extends Place {
  /** Half of its width, px; of a point of a line none. */
  readonly half?: number;
}
interface Words {
  readonly width: number;
  readonly height: number;
}
interface Around {
  /** The frame, px. */
  readonly width: number;
  readonly height: number;
  /** Points that the words must not cover: other handles, and the lines as close rows of points. */
  readonly clearOf: readonly InTheWay[];
  /** Free room round the words, px. */
  readonly room: number;
  /** From the place to the nearest edge of the words, px: the first free one is taken. */
  readonly reach: readonly number[];
}

/** Eight ways out from the place, the first preferred. */
const ways: readonly (readonly [number, number])[] = [[0, -1], [1, 0], [-1, 0], [1, -1], [-1, -1], [0, 1], [1, 1], [-1, 1]];

/** Half of the width of a handle's ring, its stroke included, px. */
export const ringHalf = 9.5;
/** Words do not touch the edge of the picture, px. */
const rimPx = 10;
/** A covered handle cannot be taken hold of: so many points of a line weigh as little. */
const ringWeight = 100;

/**
 * Middle of the words that belong to a place: near to it, inside the frame, covering as little as can be (nothing, where there
 * is room), and handles last of all.
 */
export function clearPlace(at: Place, words: Words, around: Around): Place {
  let best: Place = at;
  let fewest = Infinity;
  for (const reach of around.reach) {
    for (const [dx, dy] of ways) {
      const x = clampIn(at.x + dx * (reach + words.width / 2), words.width / 2 + rimPx, around.width);
      const y = clampIn(at.y + dy * (reach + words.height / 2), words.height / 2 + 4, around.height);
      let covered = 0;
      for (const p of around.clearOf) {
        const free = around.room + (p.half ?? 0);
        if (Math.abs(p.x - x) < words.width / 2 + free && Math.abs(p.y - y) < words.height / 2 + free) covered += p.half ? ringWeight : 1;
      }
      // Pushed back by the frame, the words may come to lie on the place itself.
      const onPlace = Math.abs(at.x - x) < words.width / 2 + around.room && Math.abs(at.y - y) < words.height / 2 + around.room ? 100_000 : 0;
      if (covered + onPlace < fewest) [best, fewest] = [{ x, y }, covered + onPlace];
      if (fewest === 0) return best;
    }
  }
  return best;
}

const clampIn = (v: number, margin: number, size: number): number => Math.max(margin, Math.min(size - margin, v));
