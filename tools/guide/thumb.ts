import type { Piece } from "#pieces/piece.ts";
import { bounds } from "#plane/measure.ts";

const boxPx = { width: 120, height: 80 };
const padPx = 6;

/** A piece as a small picture: its cutting line and fold lines, thick enough to be seen; toe to the right where the piece has one. */
export function thumb(piece: Piece): string {
  const b = bounds(piece.outline);
  const scale = Math.min((boxPx.width - 2 * padPx) / (b.maxX - b.minX), (boxPx.height - 2 * padPx) / (b.maxY - b.minY));
  const x = (v: number): number => boxPx.width / 2 + scale * (v - (b.minX + b.maxX) / 2);
  const y = (v: number): number => boxPx.height / 2 - scale * (v - (b.minY + b.maxY) / 2);
  const path = (xy: Float64Array): string => {
    const points: string[] = [];
    for (let i = 0; i < xy.length; i += 2) points.push(`${tenth(x(xy[i]!))} ${tenth(y(xy[i + 1]!))}`);
    // Points that fall together at this size say nothing.
    return `M${points.filter((p, i) => p !== points[i - 1]).join("L")}`;
  };
  const inner = piece.marks.flatMap((m) => (m.kind === "line" && (m.use === "fold" || m.use === "net") ? [`<path stroke-width="0.6" d="${path(m.line.xy)}"/>`] : []));
  return `<?xml version="1.0" encoding="UTF-8"?>
<svg xmlns="http://www.w3.org/2000/svg" width="${boxPx.width}" height="${boxPx.height}" viewBox="0 0 ${boxPx.width} ${boxPx.height}" fill="none" stroke="#1a1a1a" stroke-linejoin="round">
<rect width="100%" height="100%" fill="#fdfbf7" stroke="none"/>
<path fill="#f1e6d3" stroke-width="1.3" d="${path(piece.outline.xy)}Z"/>
${inner.join("\n")}
</svg>
`;
}

const tenth = (v: number): string => String(Math.round(10 * v) / 10);
