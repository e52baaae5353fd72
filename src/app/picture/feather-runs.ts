import type { FeatherLine } from "#last/last.ts";

/** How sure the line is over a stretch: a clear edge, a soft one, or hardly any. */
export type Sureness = "clear" | "soft" | "guessed";
interface FeatherRun {
  readonly sureness: Sureness;
  /** Points x0 y0 z0 …; the last is the first of the next run, so that no gap is seen. */
  readonly points: Float64Array;
}

/** Borders between the three, as confidence; "soft" begins where the finding "edge-soft" counts from. */
const softBelow = 0.4;
const guessedBelow = 0.15;
/** Runs shorter than this, points of the line, are not told apart: their pattern could not be seen. */
const shortest = 4;

export const surenessOf = (confidence: number): Sureness => (confidence < guessedBelow ? "guessed" : confidence < softBelow ? "soft" : "clear");

/** The closed line cut where its sureness changes. `points` may be another course of the same line, point by point. */
export function featherRuns({ confidence }: Pick<FeatherLine, "confidence">, points: Float64Array): readonly FeatherRun[] {
  const n = confidence.length;
  const kinds = calmed(Array.from(confidence, surenessOf));
  const start = kinds.findIndex((k, i) => k !== kinds[(i + n - 1) % n]);
  const piece = (from: number, count: number): Float64Array => Float64Array.from({ length: 3 * (count + 1) }, (_, k) => points[3 * ((from + Math.floor(k / 3)) % n) + (k % 3)]!);
  if (start < 0) return [{ sureness: kinds[0] ?? "clear", points: piece(0, n) }];
  const runs: FeatherRun[] = [];
  for (let i = 0; i < n; ) {
    const kind = kinds[(start + i) % n]!;
    let count = 1;
    while (i + count < n && kinds[(start + i + count) % n] === kind) count++;
    runs.push({ sureness: kind, points: piece(start + i, count) });
    i += count;
  }
  return runs;
}

/** Each kind that holds for fewer than `shortest` points gives way to the one before it. */
function calmed(kinds: readonly Sureness[]): readonly Sureness[] {
  const n = kinds.length;
  const out = [...kinds];
  const start = Math.max(0, kinds.findIndex((k, i) => k !== kinds[(i + n - 1) % n]));
  for (let i = 0; i < n; ) {
    const at = (start + i) % n;
    let count = 1;
    while (i + count < n && kinds[(start + i + count) % n] === kinds[at]) count++;
    if (count < shortest && count < n) for (let k = 0; k < count; k++) out[(start + i + k) % n] = out[(start + i + n - 1) % n]!;
    i += count;
  }
  return out;
}
