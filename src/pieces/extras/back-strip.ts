import { offsetEdge } from "#plane/edge-offset.ts";
import type { Polyline } from "#plane/outline.ts";
import type { Drawn } from "../edges/edge-lines.ts";
import { edgeLength, edgePoint } from "../net-upper.ts";
import { lineMark, outward } from "../marks.ts";
import { sideWord } from "../words.ts";
import { cannot, leftOut, toplineOutMm, type Extra, type ExtraInput, type PlaceMark } from "./extra.ts";
import { lineOf, taperedOutline } from "./shapes.ts";
import { foldPair, stripDraft } from "./strip-draft.ts";

/** A strip over the back seam, wider below, lasted with the upper and turned over with its topline, or sewn and turned with it where that is bagged. */
export function backStrip({ panels, settings, chosen, labels }: ExtraInput): Extra {
  const back = panels.flatMap((p) => p.edges).find((e) => e.role === "back");
  if (!back) return leftOut(cannot("back strip", "this cut has no seam at the back to cover", "leave it out, or cut the upper with a back seam"));
  const { backStripTopMm: top, backStripFeatherMm: low, backStripFoldMm: fold, lastingHeelMm: lasting } = settings;
  const height = edgeLength(back);
  const turned = toplineOutMm(settings, chosen);
  // Along +x from the tip that is turned over the topline to the tip under the insole; it widens evenly all the way.
  const rate = (low - top) / height;
  const wideAt = (x: number): number => top + rate * (x - turned);
  const long = turned + height + lasting;
  const draft = stripDraft({
    name: "back strip",
    material: "upper leather",
    outline: taperedOutline(long, wideAt(0) + 2 * fold, wideAt(long) + 2 * fold),
    marks: [
      ...foldPair("fold", fold, [0, wideAt(0) / 2], [long, wideAt(long) / 2]),
      ...(turned > 0 ? [toplineMark(chosen, lineOf([turned, -top / 2], [turned, top / 2]))] : []),
      lineMark("feather line", "net", lineOf([turned + height, -low / 2], [turned + height, low / 2])),
      lineMark("back seam beneath", "centre", lineOf([0, 0], [long, 0])),
    ],
    notes: ["over the back seam", "grain side up"],
    labels,
    freeMm: top,
  });
  return { drafts: [draft], marks: placeOnUpper(panels, top, low) };
}

const toplineMark = ({ edge }: ExtraInput["chosen"], line: Polyline): Drawn => (edge === "bagged" ? lineMark("seam of the topline", "stitch", line) : lineMark("topline", "fold", line));

/** How far inside its edge the strip hides a prick, and from its ends it is pricked, mm. */
const hiddenMm = 1.5;
const offEndsMm = 6;

/** Where the strip's edge comes to lie on either side of the seam, and a prick near either end of it that the strip hides. */
const placeOnUpper = (panels: ExtraInput["panels"], top: number, low: number): readonly PlaceMark[] =>
  panels.flatMap(({ edges }, panel) =>
    edges.flatMap((edge) => {
      if (edge.role !== "back") return [];
      const end = edgeLength(edge);
      // The inner bank runs up from the seat, the outer one down to it.
      const share = (s: number): number => (edge.half === "medial" ? s : end - s) / end;
      const beside = (s: number): number => (low + share(s) * (top - low)) / 2;
      const line = offsetEdge(edge.line, edge.arc.map((s) => -beside(s)));
      const name = `edge of the back strip${sideWord(edge.half)}`;
      const pricks = [offEndsMm, end - offEndsMm].map((s): Drawn => {
        const [[x, y], [nx, ny], mm] = [edgePoint(edge, s), outward(edge, s), beside(s) - hiddenMm];
        return { kind: "prick", name, at: [x - mm * nx, y - mm * ny] };
      });
      return [lineMark(name, "place", line, "own pricks"), ...pricks].map((mark) => ({ panel, mark }));
    }),
  );
