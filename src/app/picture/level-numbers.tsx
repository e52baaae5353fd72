import type { ReactElement } from "react";

/** A number on a line of equal height or stretch, px. */
export interface LevelNumber {
  readonly key: string;
  readonly x: number;
  readonly y: number;
  readonly text: string;
}

/** Nearer than this, px, two numbers run together into another one. */
const leastPx = 24;

/** Keeps the numbers that stand clear of all before them; the later ones give way. */
export function clearNumbers(numbers: readonly LevelNumber[]): readonly LevelNumber[] {
  const kept: LevelNumber[] = [];
  for (const n of numbers) if (kept.every((k) => Math.hypot(k.x - n.x, k.y - n.y) >= leastPx + 3.5 * Math.max(0, n.text.length - 2))) kept.push(n);
  return kept;
}

/** The numbers of the lines in the picture, clear of one another. */
export function LevelNumbers({ numbers }: { readonly numbers: readonly LevelNumber[] }): ReactElement {
  return <>{clearNumbers(numbers).map(({ key, x, y, text }) => <text key={key} className="level" x={x} y={y} textAnchor="middle" dominantBaseline="middle">{text}</text>)}</>;
}
