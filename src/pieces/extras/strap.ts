import { finding } from "#base/findings.ts";
import { Sectioner } from "#mesh/section.ts";
import { lineMark, outward } from "../marks.ts";
import { edgePoint } from "../net-upper.ts";
import { halves } from "#lines/feather.ts";
import { sideWord } from "../edges/places.ts";
import { cannot, leftOut, type Extra, type ExtraInput, type PlaceMark } from "./extra.ts";
import { lineOf, stripOutline } from "./shapes.ts";
import { strapWay } from "./strap-way.ts";
import { foldPair, stripDraft } from "./strip-draft.ts";
import { toplinePlace } from "./topline-way.ts";

/** The strap's lining is cut net and a little narrower, so that it does not show, mm on each edge. */
const liningInMm = 0.5;
/** How far a place is drawn in from the topline, mm. */
const drawnInMm = 12;

/** A strap over the instep: sewn in at the inner side, closed over the outer one. Its length is measured on the last. */
export function strap(input: ExtraInput): Extra {
  const { onLast, settings, labels } = input;
  const { strapBehindThroatMm: behind, strapWidthMm: wide, strapFoldMm: fold, strapUnderMm: under, strapOverMm: over } = settings;
  if (!onLast) return leftOut(cannot("instep strap", "a taped pattern has no instep to measure it over", "measure over the last with a tape from topline to topline and cut a strap of that length"));
  const way = strapWay(onLast.lines, new Sectioner(onLast.last.mesh), behind);
  if (!way) return leftOut(finding("strap-meets-nothing", { behindMm: behind }));
  const inner = under, outer = under + way.lengthMm, long = outer + over;
  const across = (x: number, half: number) => lineOf([x, -half], [x, half]);
  const half = wide / 2;
  const marks = [
    ...foldPair("fold", fold, [0, half], [long - half - fold, half]),
    lineMark("inner topline", "place", across(inner, half)),
    lineMark("outer topline", "place", across(outer, half)),
    { kind: "prick" as const, name: "button", at: [outer + over / 2, 0] as const },
  ];
  const notes = fold > 0 ? [`${wide} mm wide once folded`, "grain side up"] : ["raw edges", "grain side up"];
  const leather = stripDraft({ name: "instep strap", material: "upper leather", outline: stripOutline(long + fold, wide + 2 * fold, true), marks, notes, labels });
  const lining = stripDraft({ name: "strap lining", material: "lining leather", outline: stripOutline(long - liningInMm, wide - 2 * liningInMm, true), marks: marks.slice(-3), notes: ["net, under the strap"], labels });
  const places = halves.flatMap((side) => placeOnUpper(input, side));
  return { drafts: [leather, lining], marks: places };
}

/** Two lines across the topline between which the strap lies. */
function placeOnUpper({ panels, settings: { strapBehindThroatMm: behind, strapWidthMm: wide } }: ExtraInput, side: "medial" | "lateral"): readonly PlaceMark[] {
  return [-wide / 2, wide / 2].flatMap((off): readonly PlaceMark[] => {
    const place = toplinePlace(panels, side, behind + off);
    if (!place) return [];
    const edge = panels[place.panel]!.edges[place.edge]!;
    const [x, y] = edgePoint(edge, place.s);
    const [nx, ny] = outward(edge, place.s);
    return [{ panel: place.panel, mark: lineMark(`strap${sideWord(side)}`, "place", lineOf([x, y], [x - drawnInMm * nx, y - drawnInMm * ny])) }];
  });
}
