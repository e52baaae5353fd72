import type { ReactElement } from "react";
import { clearPlace, type InTheWay, type Place } from "./clear-place.ts";
import { inMargins, type Named, type Span } from "./margin-labels.ts";

/** Words in the margins of a picture, each with a thin leader line to its place. */
export function MarginWords({ items, width, height, body }: { readonly items: readonly Named[]; readonly width: number; readonly height: number; readonly body?: Span | undefined }): ReactElement {
  return (
    <g className="margin-words">
      {inMargins(items, width, height, body).map((l) => {
        const end = l.labelX + (l.side === "left" ? 6 : -6);
        return (
          <g key={l.key}>
            <path d={`M${end.toFixed(1)} ${l.labelY.toFixed(1)}L${l.x.toFixed(1)} ${l.y.toFixed(1)}`} className="leader" />
            <circle cx={l.x} cy={l.y} r={2.5} className="dot" />
            <text x={l.labelX} y={l.labelY} textAnchor={l.side === "left" ? "end" : "start"} dominantBaseline="middle">{l.text}</text>
          </g>
        );
      })}
    </g>
  );
}

interface PinnedNotesProps {
  readonly items: readonly Named[];
  readonly width: number;
  readonly height: number;
  /** Lines and handles, px. */
  readonly clearOf: readonly InTheWay[];
}

/** Short notes near the places they are pinned to, clear of the lines, the handles and one another. */
export function PinnedNotes({ items, width, height, clearOf }: PinnedNotesProps): ReactElement {
  const taken: InTheWay[] = [...clearOf];
  return (
    <g className="margin-words">
      {items.map(({ key, x, y, text }) => {
        const wide = text.length * 7.6;
        const at = clearPlace({ x, y }, { width: wide, height: 18 }, { width, height, clearOf: taken, room: 7, reach: [24, 40, 60, 85, 115, 150] });
        for (let i = 0; i <= 4; i++) taken.push({ x: at.x + (i / 4 - 0.5) * wide, y: at.y });
        // The leader ends at the edge of the words that looks at the place.
        const endX = Math.max(at.x - wide / 2 - 4, Math.min(at.x + wide / 2 + 4, x));
        const endY = Math.max(at.y - 11, Math.min(at.y + 11, y));
        return (
          <g key={key}>
            <path d={`M${endX.toFixed(1)} ${endY.toFixed(1)}L${x.toFixed(1)} ${y.toFixed(1)}`} className="leader" />
            <circle cx={x} cy={y} r={2.5} className="dot" />
            <text x={at.x} y={at.y} textAnchor="middle" dominantBaseline="middle">{text}</text>
          </g>
        );
      })}
    </g>
  );
}

/** Points along lines, close enough that no word finds room between two of them. */
export function alongLines(lines: readonly (readonly Place[])[], stepPx = 6): Place[] {
  return lines.flatMap((line) => {
    const out: Place[] = line.slice(0, 1);
    for (let i = 1; i < line.length; i++) {
      const [a, b] = [line[i - 1]!, line[i]!];
      const n = Math.max(1, Math.ceil(Math.hypot(b.x - a.x, b.y - a.y) / stepPx));
      for (let k = 1; k <= n; k++) out.push({ x: a.x + ((b.x - a.x) * k) / n, y: a.y + ((b.y - a.y) * k) / n });
    }
    return out;
  });
}
