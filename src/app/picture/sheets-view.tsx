import { useMemo, useRef, type ReactElement } from "react";
import { insidePoint } from "../state/inside-point.ts";
import type { PagePlan } from "../state/page-plan.ts";
import { useSize } from "./use-size.ts";

/** The pages as they will be joined, with the pieces on them. */
export function SheetsView({ plan }: { readonly plan: PagePlan }): ReactElement {
  const frame = useRef<HTMLDivElement>(null);
  const { width, height } = useSize(frame);
  const { sheet, tiling } = plan;
  const insides = useMemo(() => sheet.placed.map((p) => insidePoint(p.outline)), [sheet]);
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
        <svg className="overlay" width={width} height={height} role="img" aria-label={`${tiling.tiles.length} pages with the pieces on them, as they are joined.`}>
          {tiling.tiles.map((t, i) => (
            <rect key={i} className="page" x={x(t.xMm)} y={y(t.yMm + windowHeightMm)} width={windowWidthMm * scale} height={windowHeightMm * scale} />
          ))}
          {sheet.placed.map((p, i) => <path key={i} className="cut" d={path(p.outline)} />)}
          {sheet.placed.map((p, i) => insides[i]!.room * scale > Math.max(15, 2.9 * p.piece.name.length) && (
            <text key={i} className="on-page" x={x(insides[i]!.x)} y={y(insides[i]!.y)} textAnchor="middle">
              <tspan>{p.piece.name}</tspan>
              <tspan x={x(insides[i]!.x)} dy="1.15em">{p.piece.side}</tspan>
            </text>
          ))}
          {tiling.tiles.map((t, i) => <text key={i} className="page-number" x={x(t.xMm) + 7} y={y(t.yMm + windowHeightMm) + 17}>{i + 1 + plan.covers}</text>)}
        </svg>
      </div>
      <p className="under">Pages as they are joined, with the numbers that are printed on them.</p>
    </section>
  );
}
