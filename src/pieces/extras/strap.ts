import { finding } from "#base/findings.ts";
import { Sectioner } from "#mesh/section.ts";
import { foldNotchDepthMm, lineMark, notchAt, outward } from "../marks.ts";
import type { Drawn } from "../edges/edge-lines.ts";
import { edgeLength, edgePoint } from "../net-upper.ts";
import { halves, type Half } from "#lines/feather.ts";
import { sideWord } from "../words.ts";
import { cannot, leftOut, toplineOutMm, type Extra, type ExtraInput, type PlaceMark } from "./extra.ts";
import { lineOf, roundEnd, stripOutline } from "./shapes.ts";
import { strapWay } from "./strap-way.ts";
import { foldPair, stripDraft } from "./strip-draft.ts";
import { toplinePlace, type ToplinePlace } from "./topline-way.ts";

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
  const places = (halfMm: number): readonly Drawn[] => [
    // Drawn alone: a hole there would be seen.
    lineMark("inner topline", "place", across(inner, halfMm), "own pricks"),
    lineMark("outer topline", "place", across(outer, halfMm), "own pricks"),
    { kind: "prick", name: "button", at: [outer + over / 2, 0] },
  ];
  const marks = [...foldPair("fold", fold, [0, half], [long - half, half]), ...(fold > 0 ? [lineMark("fold", "fold", roundEnd(long, half))] : []), ...places(half)];
  const notes = fold > 0 ? [`${wide} mm wide once folded`, "grain side up"] : ["raw edges", "grain side up"];
  const leather = stripDraft({ name: "instep strap", material: "upper leather", outline: stripOutline(long + fold, wide + 2 * fold, true), marks, notes, labels, freeMm: wide });
  const lining = stripDraft({ name: "strap lining", material: "lining leather", outline: stripOutline(long - liningInMm, wide - 2 * liningInMm, true), marks: places(half - liningInMm), notes: ["net, under the strap"], labels, freeMm: wide - 2 * liningInMm });
  const sides = halves.map((side) => placeOnUpper(input, side));
  return { drafts: [leather, lining], marks: sides.flatMap((s) => s.marks), findings: sides.flatMap((s) => s.findings) };
}

/** So far from a seam the strap's edges stay, mm: its stitches would go through the seam's. */
const offSeamMm = 10;

/**
 * Two lines across the topline between which the strap lies, each with a notch in what is turned over there. No pricks: inside it lies
 * under the upper, outside it is opened, and either way they would be seen.
 */
function placeOnUpper({ panels, settings, chosen }: ExtraInput, half: Half): Pick<Required<Extra>, "marks" | "findings"> {
  const { strapBehindThroatMm: behind, strapWidthMm: wide } = settings;
  const outMm = toplineOutMm(settings, chosen);
  const places = [-wide / 2, wide / 2].map((off) => toplinePlace(panels, half, behind + off));
  const marks = places.flatMap((place): readonly PlaceMark[] => {
    if (!place) return [];
    const edge = panels[place.panel]!.edges[place.edge]!;
    const [x, y] = edgePoint(edge, place.s);
    const [nx, ny] = outward(edge, place.s);
    const name = `strap${sideWord(half)}`;
    const drawn = lineMark(name, "place", lineOf([x, y], [x - drawnInMm * nx, y - drawnInMm * ny]), "own pricks");
    const notch = outMm > 0 ? [notchAt(name, edge, place.s, outMm, Math.min(foldNotchDepthMm, outMm / 2))] : [];
    return [drawn, ...notch].map((mark) => ({ panel: place.panel, mark }));
  });
  return { marks, findings: clearOfSeams(panels, places) ? [] : [finding("strap-on-seam", { half, behindMm: behind, neededMm: offSeamMm })] };
}

/** Whether both edges of the strap lie on one stretch of the topline, away from its ends. */
function clearOfSeams(panels: ExtraInput["panels"], [front, back]: readonly (ToplinePlace | undefined)[]): boolean {
  if (!front || !back || front.panel !== back.panel || front.edge !== back.edge) return false;
  const end = edgeLength(panels[front.panel]!.edges[front.edge]!);
  return [front.s, back.s].every((s) => s >= offSeamMm && s <= end - offSeamMm);
}
