import type { CutPanel } from "../edges/cut-panel.ts";
import type { Drawn } from "../edges/edge-lines.ts";
import { panelOutline } from "../edges/panel-outline.ts";
import { sideWord } from "../edges/places.ts";
import { lineMark, notchAt, notchDepthMm, outward } from "../marks.ts";
import { edgeLength, edgePoint } from "../net-upper.ts";
import type { NetEdge } from "../panel.ts";
import { centreNotches, insideLines, jointNotches, stretchArrow, toplineNotches, waistNotches } from "../upper/marks.ts";

/** Half the distance of two notches that stand together, and the length of the mark that stands for one where the edge is seen; mm. */
const pairMm = 2;
const tickMm = 4;

/** Trim, seam, feather and lap lines, and what is skived. `laid` names the piece whose edge lies on a lap. */
export function edgeMarks({ edges }: CutPanel, laid: string): readonly Drawn[] {
  return edges.flatMap(({ net, finish, line, skive }): readonly Drawn[] => {
    switch (finish) {
      case "lasting":
        return [lineMark("feather line", "net", line)];
      case "trim":
        return [lineMark("topline: trim here", "net", line)];
      case "bag":
        return [lineMark("seam of the topline", "stitch", line)];
      case "seam":
        return [lineMark(`back seam${sideWord(net.half)}`, "stitch", line)];
      case "lap":
        return [lineMark(`${laid} to here${sideWord(net.half)}`, "place", line)];
      default:
        return skive ? [lineMark("skive to here", "skive", skive)] : [];
    }
  });
}

/** Marks that meet, at the same shares of both edges of a joint: one at a third from the feather line, two at two thirds. Nothing is cut into an edge that is seen. */
export function jointMarks({ panel, edges }: CutPanel, lapMm: number): readonly Drawn[] {
  return panel.edges.flatMap((edge, k) => {
    if (edge.role !== "side") return [];
    const up = panel.edges[(k + panel.edges.length - 1) % panel.edges.length]!.role === "feather";
    const length = edgeLength(edge);
    const name = edge.seam ?? "lining";
    return [length / 3, (2 * length) / 3 - pairMm, (2 * length) / 3 + pairMm].map((mm) => {
      const s = up ? mm : length - mm;
      return edges[k]!.finish === "lap" ? notchAt(name, edge, s, lapMm, Math.min(notchDepthMm, lapMm / 2)) : tick(name, edge, s);
    });
  });
}

function tick(name: string, edge: NetEdge, s: number): Drawn {
  const [x, y] = edgePoint(edge, s);
  const [nx, ny] = outward(edge, s);
  return lineMark(name, "place", { xy: Float64Array.of(x, y, x - tickMm * nx, y - tickMm * ny) });
}

/** What the lining's pieces share with the upper's: centre, joints, heights along the topline by which the lining is laid in, the notch that means inside. */
export function sharedMarks({ panel, outline }: CutPanel, trimMm: number, marginMm: (s: number) => number): readonly Drawn[] {
  const depthMm = Math.min(1.5, trimMm / 2);
  const widthAt = (_: number, s: number): number => marginMm(s);
  return [
    ...insideLines(panel, outline),
    ...stretchArrow(panel, panelOutline(panel)),
    ...centreNotches(panel, outline, depthMm),
    ...jointNotches(panel, outline, widthAt),
    ...waistNotches(panel, outline, widthAt),
    // Nothing is cut into an edge that is sewn and turned.
    ...(trimMm > 0 ? toplineNotches(panel, trimMm, depthMm) : []),
  ];
}
