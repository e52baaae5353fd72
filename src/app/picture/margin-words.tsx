import type { ReactElement } from "react";
import { inMargins, type Named } from "./margin-labels.ts";

/** Words in the margins of a picture, each with a thin leader line to its place. */
export function MarginWords({ items, width, height }: { readonly items: readonly Named[]; readonly width: number; readonly height: number }): ReactElement {
  return (
    <g className="margin-words">
      {inMargins(items, width, height).map((l) => {
        const end = l.labelX + (l.side === "left" ? 1 : -1) * (l.text.length * 7.3 + 8);
        return (
          <g key={l.key}>
            <path d={`M${end.toFixed(1)} ${l.labelY.toFixed(1)}L${l.x.toFixed(1)} ${l.y.toFixed(1)}`} className="leader" />
            <circle cx={l.x} cy={l.y} r={2.5} className="dot" />
            <text x={l.labelX} y={l.labelY} textAnchor={l.side === "left" ? "start" : "end"} dominantBaseline="middle">{l.text}</text>
          </g>
        );
      })}
    </g>
  );
}
