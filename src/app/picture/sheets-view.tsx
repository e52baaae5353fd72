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
  const { windowWidthMm } = sheet.grid;
  // The pages that are printed, and no paper besides: of a roll only as much as its pieces need.
  const [left, right] = [Math.min(...tiling.tiles.map((t) => t.xMm)), Math.max(...tiling.tiles.map((t) => t.xMm + windowWidthMm))];
  const [low, high] = [Math.min(...tiling.tiles.map((t) => t.yMm)), Math.max(...tiling.tiles.map((t) => t.yMm + t.heightMm))];
  const scale = Math.max(0.01, Math.min((width - 40) / (right - left), (height - 40) / (high - low)));
  const x = (mm: number): number => (width - (right - left) * scale) / 2 + (mm - left) * scale;
  const y = (mm: number): number => (height - (high - low) * scale) / 2 + (high - mm) * scale;
  const path = (xy: Float64Array): string => {
    let d = "";
    for (let i = 0; i < xy.length; i += 2) d += `${i === 0 ? "M" : "L"}${x(xy[i]!).toFixed(1)} ${y(xy[i + 1]!).toFixed(1)}`;
    return `${d}Z`;
  };
  return (
    <section className="view sheets" aria-label="The pages">
      <div className="frame" ref={frame}>
        <svg className="overlay" width={width} height={height} role="img" aria-label={`${tiling.tiles.length} pages with the pieces on them, as they are joined.`}>
          {tiling.tiles.map((t, i) => (
            <rect key={i} className="page" x={x(t.xMm)} y={y(t.yMm + t.heightMm)} width={windowWidthMm * scale} height={t.heightMm * scale} />
          ))}
          {sheet.placed.map((p, i) => <path key={i} className="cut" d={path(p.outline)} />)}
          {sheet.placed.map((p, i) => insides[i]!.room * scale > Math.max(15, 2.9 * p.piece.name.length) && (
            <text key={i} className="on-page" x={x(insides[i]!.x)} y={y(insides[i]!.y)} textAnchor="middle">
              <tspan>{p.piece.name}</tspan>
              <tspan x={x(insides[i]!.x)} dy="1.15em">{p.piece.side}</tspan>
            </text>
          ))}
          {tiling.tiles.map((t, i) => <text key={i} className="page-number" x={x(t.xMm) + 7} y={y(t.yMm + t.heightMm) + 17}>{i + 1 + plan.covers}</text>)}
        </svg>
      </div>
      <p className="under">Pages as they are joined, with the numbers that are printed on them.</p>
    </section>
  );
}
