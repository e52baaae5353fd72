import type { CutPanel } from "../edges/cut-panel.ts";
import type { Drawn } from "../edges/edge-lines.ts";
import { lineMark } from "../marks.ts";
import { edgePoint } from "../net-upper.ts";
import type { Xy } from "../piece.ts";
import type { PieceSettings } from "../settings.ts";

/** On the half that the tongue of the other one is stitched down on: its outline there, from the seam to the topline. None where there is no tongue. */
export function dogTailPlace({ panel }: CutPanel, all: readonly CutPanel[], { dogTailLongMm, dogTailWideMm }: Pick<PieceSettings, "dogTailLongMm" | "dogTailWideMm">): readonly Drawn[] {
  const tail = all.find(({ snips }) => snips.length > 0);
  const n = panel.edges.length;
  // The topline of the other half begins at the back.
  const k = panel.edges.findIndex((e, i) => e.role === "topline" && panel.edges[(i + n - 1) % n]!.role === "back");
  if (!tail || k < 0) return [];
  const topline = panel.edges[k]!;
  const [x, y] = edgePoint(topline, 0);
  const [ex, ey] = edgePoint(topline, dogTailLongMm);
  const length = Math.sqrt((ex - x) ** 2 + (ey - y) ** 2);
  // The piece lies to the left of its rim.
  const [dx, dy] = [(ex - x) / length, (ey - y) / length];
  const down = ([px, py]: Xy): Xy => [px - dogTailWideMm * dy, py + dogTailWideMm * dx];
  return [lineMark("dog-tail lies here", "place", { xy: Float64Array.of(...down([x, y]), ...down([ex, ey]), ex, ey) })];
}
