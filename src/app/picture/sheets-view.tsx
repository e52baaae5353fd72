import { useRef, type ReactElement } from "react";
import { papers } from "#sheets/paper.ts";
import type { PagePlan } from "../state/page-plan.ts";
import { useSize } from "./use-size.ts";

/** The pages as they will be joined, with the pieces on them. */
export function SheetsView({ plan, paper }: { readonly plan: PagePlan; readonly paper: "A4" | "Letter" }): ReactElement {
  const frame = useRef<HTMLDivElement>(null);
  const { width, height } = useSize(frame);
  const { sheet, tiling } = plan;
  const scale = Math.max(0.01, Math.min((width - 40) / sheet.widthMm, (height - 40) / sheet.heightMm));
  const x = (mm: number): number => (width - sheet.widthMm * scale) / 2 + mm * scale;
  const y = (mm: number): number => (height - sheet.heightMm * scale) / 2 + (sheet.heightMm - mm) * scale;
  const path = (xy: Float64Array): string => {
    let d = "";
    for (let i = 0; i < xy.length; i += 2) d += `${i === 0 ? "M" : "L"}${x(xy[i]!).toFixed(1)} ${y(xy[i + 1]!).toFixed(1)}`;
    return `${d}Z`;
  };
  const { windowWidthMm, windowHeightMm } = sheet.grid;
  return (
    <section className="view sheets" aria-label="The pages">
      <div className="frame" ref={frame}>
        <svg className="overlay" width={width} height={height} role="img" aria-label={`${plan.pages} pages of ${papers[paper].name} with the pieces on them, as they are joined.`}>
          {tiling.tiles.map((t, i) => (
            <g key={i}>
              <rect className="page" x={x(t.xMm)} y={y(t.yMm + windowHeightMm)} width={windowWidthMm * scale} height={windowHeightMm * scale} />
              <text className="page-number" x={x(t.xMm) + 8} y={y(t.yMm + windowHeightMm) + 18}>{i + 1}</text>
            </g>
          ))}
          {sheet.placed.map((p, i) => (
            <g key={i}>
              <path className="cut" d={path(p.outline)} />
              <text className="on-page" x={x((p.bounds.minX + p.bounds.maxX) / 2)} y={y((p.bounds.minY + p.bounds.maxY) / 2)} textAnchor="middle">{p.piece.name}, {p.piece.side}</text>
            </g>
          ))}
        </svg>
      </div>
      <p className="from">Pages as they are joined; the numbers are those of the pages with pattern.</p>
    </section>
  );
}
