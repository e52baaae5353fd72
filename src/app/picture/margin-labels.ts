/** Something in the picture that has a name: its place, and the words. */
export interface Named {
  readonly key: string;
  readonly x: number;
  readonly y: number;
  readonly text: string;
}
export interface Placed extends Named {
  readonly side: "left" | "right";
  /** The end of the words that looks at the picture, px, where the leader line begins; their middle in height. */
  readonly labelX: number;
  readonly labelY: number;
}

/** From where to where something reaches across the picture, px. */
export interface Span {
  readonly left: number;
  readonly right: number;
}

/**
 * Stands words in the margins, each on the side its place is nearer to, from top to bottom in the order of the places, so that
 * no two overlap and no two leader lines on one side cross. They stand clear of `body`, where there is room.
 */
export function inMargins(items: readonly Named[], width: number, height: number, body: Span = { left: Infinity, right: -Infinity }): readonly Placed[] {
  const margin = 10;
  const room = height - 2 * margin;
  const leftmost = Math.min(...items.map((i) => i.x));
  const rightmost = Math.max(...items.map((i) => i.x));
  // A little left of the middle, so that what stands in the middle does not draw its line across the whole last.
  const border = items.length > 1 ? leftmost + 0.4 * (rightmost - leftmost) : width / 2;
  // Where both margins are full the lines move together.
  const lineHeight = Math.max(leastLine, Math.min(24, room / Math.ceil(items.length / 2)));
  const fits = Math.max(1, Math.floor(room / lineHeight + 1e-6));
  const byX = [...items].sort((a, b) => a.x - b.x);
  const wanted = byX.filter((i) => i.x < border).length;
  const onLeft = Math.max(Math.min(wanted, fits), items.length - fits);
  return (["left", "right"] as const).flatMap((side) => {
    const mine = (side === "left" ? byX.slice(0, onLeft) : byX.slice(onLeft)).sort((a, b) => a.y - b.y);
    const longest = Math.max(0, ...mine.map((i) => letterWidth * i.text.length));
    // Not farther out than needed, for a leader line is there to be short; all words end at one line, so that no leader runs through any.
    const out = side === "left" ? Math.max(margin + longest, Math.min(leftmost, body.left) - leadPx) : Math.min(width - margin - longest, Math.max(rightmost, body.right) + leadPx);
    const ys = spread(mine.map((i) => i.y), lineHeight, margin + lineHeight / 2, height - margin - lineHeight / 2);
    return uncrossed(mine, out, ys).map((item, i) => ({ ...item, side, labelX: out, labelY: ys[i]! }));
  });
}

/** Width of a letter of the words, px, roughly. */
export const letterWidth = 7.3;
/** Words on lines nearer together than this could not be read, px. */
const leastLine = 16;
/** From the outermost place to the words, px, where there is room. */
const leadPx = 30;

/** The places in such an order from top to bottom that no two of their leader lines cross: two that do change places until none is left. */
function uncrossed(rising: readonly Named[], x: number, ys: readonly number[]): readonly Named[] {
  const order = [...rising];
  // Each change shortens the leaders together, so this ends; the count only guards against rounding.
  for (let round = 0, again = true; again && round < order.length * order.length; round++) {
    again = false;
    for (let i = 0; i < order.length; i++)
      for (let j = i + 1; j < order.length; j++) {
        if (!cross(x, ys[i]!, order[i]!, ys[j]!, order[j]!)) continue;
        [order[i], order[j]] = [order[j]!, order[i]!];
        again = true;
      }
  }
  return order;
}

/** Whether two lines from one upright, at heights ya and yb, to their places meet on the way. */
function cross(x: number, ya: number, a: Named, yb: number, b: Named): boolean {
  const turn = (px: number, py: number, qx: number, qy: number, rx: number, ry: number): number => (qx - px) * (ry - py) - (qy - py) * (rx - px);
  return turn(x, ya, a.x, a.y, x, yb) * turn(x, ya, a.x, a.y, b.x, b.y) < 0 && turn(x, yb, b.x, b.y, x, ya) * turn(x, yb, b.x, b.y, a.x, a.y) < 0;
}

/** Rising places moved as little as needed to be `gap` apart and within [low, high]. */
export function spread(rising: readonly number[], gap: number, low: number, high: number): number[] {
  const out = [...rising];
  for (let i = 0; i < out.length; i++) out[i] = Math.max(out[i]!, i === 0 ? low : out[i - 1]! + gap);
  for (let i = out.length - 1; i >= 0; i--) out[i] = Math.min(out[i]!, i === out.length - 1 ? high : out[i + 1]! - gap);
  return out;
}
