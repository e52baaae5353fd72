import { lay, type LevelLine } from "./strain.ts";

/** The number of a line of equal height or stretch, and its place on the last, mm. */
export interface NumberOnLast {
  readonly key: string;
  readonly text: string;
  readonly at: readonly number[];
}

/** One number on each of the longer lines, at the place nearest to its middle that lies `apartMm` from all others. */
export function numbersOn(lines: readonly LevelLine[], positions: Float64Array, apartMm: number, say: (level: number) => string): readonly NumberOnLast[] {
  const out: NumberOnLast[] = [];
  for (const l of lines.filter((line) => line.points.length > 24).sort((a, b) => b.points.length - a.points.length)) {
    const n = l.points.length;
    for (const share of [0.5, 0.25, 0.75, 0.05, 0.95]) {
      const at = [...lay([l.points[Math.floor((n - 1) * share)]!], positions, 3)];
      if (out.some((o) => Math.hypot(o.at[0]! - at[0]!, o.at[1]! - at[1]!, o.at[2]! - at[2]!) < apartMm)) continue;
      out.push({ key: `${out.length}`, text: say(l.level), at });
      break;
    }
  }
  return out;
}
