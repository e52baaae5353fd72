import { lineMark } from "../marks.ts";
import type { Mark } from "../piece.ts";
import type { CutEdge, CutPanel } from "./cut-panel.ts";
import type { Finish } from "./allowance.ts";
import { edgeWord, sideWord } from "../words.ts";

export type Drawn = Exclude<Mark, { kind: "text" }>;
type Line = Extract<Mark, { kind: "line" }>;

/** What the line of an edge is drawn as, by how the edge is finished; raw edges have none. */
const drawnAs: Readonly<Record<Exclude<Finish, "raw">, readonly [Line["use"], (edge: CutEdge) => string]>> = {
  lasting: ["net", () => "feather line"],
  seam: ["stitch", ({ net }) => edgeWord(net)],
  lap: ["place", ({ net }) => `${net.role === "side" ? "vamp" : "front edge"} to here${sideWord(net.half)}`],
  fold: ["fold", ({ net }) => `fold line of the ${edgeWord(net)}`],
  trim: ["net", () => "topline: trim here"],
  bag: ["stitch", () => "seam of the topline"],
};

/** Fold, stitch, lap, trim and feather lines of a cut panel. */
export function edgeLines({ edges }: CutPanel): readonly Drawn[] {
  return edges.flatMap((edge) => {
    const stitched = edge.stitch ? [lineMark("stitches", "stitch", edge.stitch)] : [];
    if (edge.finish === "raw") return stitched;
    const [use, name] = drawnAs[edge.finish];
    return [lineMark(name(edge), use, edge.line), ...stitched];
  });
}

/** Inner borders of what is skived along the edges. */
export function skiveLines({ edges }: CutPanel): readonly Drawn[] {
  return edges.flatMap(({ skive }) => (skive ? [lineMark("skive to here", "skive", skive)] : []));
}
