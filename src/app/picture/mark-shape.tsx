import type { ReactElement } from "react";
import type { Mark } from "#pieces/piece.ts";

/** A mark as it is drawn on the flat piece, in the piece's own mm, y up. */
export function MarkShape({ mark }: { readonly mark: Mark }): ReactElement | null {
  switch (mark.kind) {
    case "line":
      return <path d={pathOf(mark.line.xy)} className={`mark ${mark.use}`} />;
    case "notch":
      return <path d={`M${mark.at[0]} ${mark.at[1]}L${mark.toward[0]} ${mark.toward[1]}`} className="mark notch" />;
    case "prick":
      return <path d={`M${mark.at[0] - 1.6} ${mark.at[1]}h3.2M${mark.at[0]} ${mark.at[1] - 1.6}v3.2`} className="mark prick" />;
    case "arrow": {
      const [dx, dy] = [mark.to[0] - mark.from[0], mark.to[1] - mark.from[1]];
      const size = Math.hypot(dx, dy) || 1;
      const [ux, uy] = [(dx / size) * 5, (dy / size) * 5];
      // A head at both ends: least stretch is a direction and has no sense.
      const head = (x: number, y: number): string => `m${-x - y / 2} ${-y + x / 2}l${x + y / 2} ${y - x / 2}l${-x + y / 2} ${-y - x / 2}`;
      return <path d={`M${mark.to[0]} ${mark.to[1]}L${mark.from[0]} ${mark.from[1]}${head(-ux, -uy)}M${mark.to[0]} ${mark.to[1]}${head(ux, uy)}`} className="mark arrow" />;
    }
    case "text":
      return null;
  }
}

/** A line x y … as the path of an SVG. */
export const pathOf = (xy: Float64Array): string => {
  let d = "";
  for (let i = 0; i < xy.length; i += 2) d += `${i === 0 ? "M" : "L"}${xy[i]!.toFixed(2)} ${xy[i + 1]!.toFixed(2)}`;
  return d;
};
