import type { ReactElement } from "react";
import type { Piece } from "#pieces/piece.ts";
import { bounds } from "#plane/measure.ts";

/** The shape of a piece as a small picture; its name stands beside it. */
export function PieceOutline({ piece }: { readonly piece: Piece }): ReactElement {
  const { minX, minY, maxX, maxY } = bounds(piece.outline);
  const room = 0.06 * Math.max(maxX - minX, maxY - minY);
  const { xy } = piece.outline;
  const step = Math.max(1, Math.floor(xy.length / 2 / 80));
  let d = "";
  for (let i = 0; i < xy.length / 2; i += step) d += `${i === 0 ? "M" : "L"}${xy[2 * i]!.toFixed(1)} ${(-xy[2 * i + 1]!).toFixed(1)}`;
  return (
    <svg className="small-piece" width="40" height="32" viewBox={`${minX - room} ${-maxY - room} ${maxX - minX + 2 * room} ${maxY - minY + 2 * room}`} aria-hidden="true">
      <path d={`${d}Z`} className="cut" />
    </svg>
  );
}
