/** Something in the picture that has a name: its place, and the words. */
export interface Named {
  readonly key: string;
  readonly x: number;
  readonly y: number;
  readonly text: string;
}
export interface Placed extends Named {
  readonly side: "left" | "right";
  /** Where the words stand, px; their middle in height. */
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
    const reach = Math.max(leastReach, ...mine.map((i) => letterWidth * i.text.length + 24));
    // Not farther out than needed: a leader line is there to be short.
    const out = side === "left" ? Math.max(margin, Math.min(leftmost, body.left) - reach) : Math.min(width - margin, Math.max(rightmost, body.right) + reach);
    const ys = spread(mine.map((i) => i.y), lineHeight, margin + lineHeight / 2, height - margin - lineHeight / 2);
    return mine.map((item, i) => ({ ...item, side, labelX: out, labelY: ys[i]! }));
  });
}

/** Width of a letter of the words, px, roughly. */
export const letterWidth = 7.3;
/** Words on lines nearer together than this could not be read, px. */
const leastLine = 16;
/** From the outermost place to the far end of the words, px, at least. */
const leastReach = 130;

/** Rising places moved as little as needed to be `gap` apart and within [low, high]. */
export function spread(rising: readonly number[], gap: number, low: number, high: number): number[] {
  const out = [...rising];
  for (let i = 0; i < out.length; i++) out[i] = Math.max(out[i]!, i === 0 ? low : out[i - 1]! + gap);
  for (let i = out.length - 1; i >= 0; i--) out[i] = Math.min(out[i]!, i === out.length - 1 ? high : out[i + 1]! - gap);
  return out;
}
