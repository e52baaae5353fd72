import { offsetEdge } from "#plane/edge-offset.ts";
import { edgeLength } from "../net-upper.ts";
import { lineMark } from "../marks.ts";
import { sideWord } from "../edges/places.ts";
import { isFolded } from "../choices.ts";
import { cannot, leftOut, type Extra, type ExtraInput, type PlaceMark } from "./extra.ts";
import { lineOf, taperedOutline } from "./shapes.ts";
import { foldPair, stripDraft } from "./strip-draft.ts";

/** A strip over the back seam, wider below, lasted with the upper and turned over with its topline. */
export function backStrip({ panels, settings, chosen, labels }: ExtraInput): Extra {
  const back = panels.flatMap((p) => p.edges).find((e) => e.role === "back");
  if (!back) return leftOut(cannot("back strip", "this cut has no seam at the back to cover", "leave it out, or cut the upper with a back seam"));
  const { backStripTopMm: top, backStripFeatherMm: low, backStripFoldMm: fold, lastingHeelMm: lasting, toplineFoldMm } = settings;
  const height = edgeLength(back);
  const turned = isFolded(chosen.edge) ? toplineFoldMm : 0;
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
      ...(turned > 0 ? [lineMark("topline", "fold" as const, lineOf([turned, -top / 2], [turned, top / 2]))] : []),
      lineMark("feather line", "net", lineOf([turned + height, -low / 2], [turned + height, low / 2])),
      lineMark("back seam beneath", "centre", lineOf([0, 0], [long, 0])),
    ],
    notes: ["over the back seam", "grain side up"],
    labels,
  });
  return { drafts: [draft], marks: placeOnUpper(panels, top, low) };
}

/** Where the strip's edge comes to lie on either side of the seam. */
const placeOnUpper = (panels: ExtraInput["panels"], top: number, low: number): readonly PlaceMark[] =>
  panels.flatMap(({ edges }, panel) =>
    edges.flatMap((edge) => {
      if (edge.role !== "back") return [];
      const end = edgeLength(edge);
      // The inner bank runs up from the seat, the outer one down to it.
      const share = (s: number): number => (edge.half === "medial" ? s : end - s) / end;
      const line = offsetEdge(edge.line, edge.arc.map((s) => -(low + share(s) * (top - low)) / 2));
      return [{ panel, mark: lineMark(`edge of the back strip${sideWord(edge.half)}`, "place", line) }];
    }),
  );
