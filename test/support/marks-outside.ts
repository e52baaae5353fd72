import { Boxed } from "#pieces/boxed.ts";
import { blockSize, boxCorners } from "#pieces/labels.ts";
import type { Mark, Piece, Xy } from "#pieces/piece.ts";

/** So much a mark may lie outside by rounding, mm. */
const toleranceMm = 0.05;

/** Marks of a piece that do not lie in it, each in words with how far it reaches out. Texts by the boxes that they may fill. */
export function marksOutside({ name, outline, marks }: Piece): readonly string[] {
  const cut = new Boxed(outline);
  const outMm = (points: readonly Xy[]): number => points.reduce((most, [x, y]) => Math.max(most, cut.holds(x, y) ? 0 : cut.nearest(x, y).mm), 0);
  return marks.flatMap((mark) => {
    const mm = outMm(pointsOf(mark));
    return mm > toleranceMm ? [`${name}: ${mark.kind} ${mark.kind === "text" ? mark.text : mark.name} ${mm.toFixed(2)} mm outside`] : [];
  });
}

function pointsOf(mark: Mark): readonly Xy[] {
  switch (mark.kind) {
    case "line":
      return Array.from({ length: mark.line.xy.length / 2 }, (_, i) => [mark.line.xy[2 * i]!, mark.line.xy[2 * i + 1]!] as const);
    case "notch":
      return [mark.at, mark.toward];
    case "prick":
      return [mark.at];
    case "arrow":
      return [mark.from, mark.to];
    case "text": {
      const [width, height] = blockSize([mark]);
      return boxCorners(mark.at, width / 2, height / 2, mark.angleDeg);
    }
  }
}
