import type { CutPanel } from "../edges/cut-panel.ts";
import type { Drawn } from "../edges/edge-lines.ts";
import { sideWord } from "../words.ts";
import { meetingMarks } from "../edges/seam-marks.ts";
import { lineMark } from "../marks.ts";
import { centreNotches, insideLines, jointNotches, toplineNotches, waistNotches } from "../upper/marks.ts";

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

/** Marks by which both edges of a joint meet. Nothing is cut into an edge that is seen. */
export const jointMarks = ({ panel, edges }: CutPanel, lapMm: number): readonly Drawn[] =>
  panel.edges.flatMap((edge, k) => (edge.role === "side" ? meetingMarks(panel, k, edge.seam ?? "lining", edges[k]!.finish === "lap" ? { outMm: lapMm, seen: false } : { outMm: 0, seen: true }) : []));

/** What the lining's pieces share with the upper's: centre, joints, heights along the topline by which the lining is laid in, the notch that means inside. */
export function sharedMarks({ panel, outline }: CutPanel, trimMm: number, marginMm: (s: number) => number): readonly Drawn[] {
  const depthMm = Math.min(1.5, trimMm / 2);
  const widthAt = (_: number, s: number): number => marginMm(s);
  return [
    ...insideLines(panel, outline),
    ...centreNotches(panel, outline, depthMm),
    ...jointNotches(panel, outline, widthAt),
    ...waistNotches(panel, outline, widthAt),
    // Nothing is cut into an edge that is sewn and turned.
    ...(trimMm > 0 ? toplineNotches(panel, trimMm, depthMm) : []),
  ];
}
