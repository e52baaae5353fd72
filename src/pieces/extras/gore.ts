import { finding, type Finding } from "#base/findings.ts";
import { halves, type Half } from "#lines/feather.ts";
import { nearestOn } from "#plane/along.ts";
import { placeOn, sideWord } from "../edges/places.ts";
import { lineMark, outward } from "../marks.ts";
import { edgePoint } from "../net-upper.ts";
import { cannot, type Extra, type ExtraInput, type PlaceMark } from "./extra.ts";
import { lineOf, ringOf } from "./shapes.ts";
import { stripDraft } from "./strip-draft.ts";
import { toplinePlace } from "./topline-way.ts";

/** What must stay between the gore's tip and the feather line, and between its elastic and a seam, mm. */
const clearMm = 10;

/** Elastic set behind a cut in the topline, at the lowest place of either side. */
export function gore(input: ExtraInput): Extra {
  const { settings, labels } = input;
  const { goreWideMm: wide, goreDeepMm: deep, goreLapMm: lap } = settings;
  const sides = halves.map((half) => cutOut(input, half));
  const elastic = stripDraft({
    name: "elastic gore",
    material: "elastic",
    // Along +x lies what was the topline; the elastic gives across it and not down it.
    outline: ringOf([[-wide / 2 - lap, 0], [-lap, -deep - lap], [lap, -deep - lap], [wide / 2 + lap, 0]]),
    marks: [lineMark("edge of the leather", "place", lineOf([-wide / 2, 0], [0, -deep])), lineMark("edge of the leather", "place", lineOf([0, -deep], [wide / 2, 0]))],
    notes: ["gives along the topline"],
    labels,
    count: sides.filter((s) => s.marks.length > 0).length,
  });
  const marks = sides.flatMap((s) => s.marks);
  return { drafts: marks.length > 0 ? [elastic] : [], marks, findings: [...sides.flatMap((s) => s.findings), ...(input.chosen.strap && input.onLast ? besideStrap(input) : [])] };
}

/** A strap that is sewn on where the topline is cut open tears out. */
function besideStrap({ panels, settings }: ExtraInput): readonly Finding[] {
  return halves.flatMap((half) => {
    const at = toplinePlace(panels, half, settings.strapBehindThroatMm);
    const lowest = at && placeOn(panels[at.panel]!, "lowest", half);
    if (!at || lowest?.edge !== at.edge) return [];
    const freeMm = Math.abs(at.s - lowest.s) - settings.strapWidthMm / 2 - settings.goreWideMm / 2 - settings.goreLapMm;
    return freeMm < 0 ? [finding("gore-under-strap", { half, byMm: -freeMm })] : [];
  });
}

function cutOut({ panels, settings: { goreWideMm: wide, goreDeepMm: deep, goreLapMm: lap } }: ExtraInput, half: Half): { readonly marks: readonly PlaceMark[]; readonly findings: readonly Finding[] } {
  const panel = panels.findIndex((p) => placeOn(p, "lowest", half));
  const place = panels[panel] && placeOn(panels[panel], "lowest", half);
  if (!place) return { marks: [], findings: [cannot("elastic gore", "the lowest place of the topline was not found", "mark it by hand")] };
  const { edges } = panels[panel]!;
  const edge = edges[place.edge]!;
  const [nx, ny] = outward(edge, place.s);
  const [x, y] = edgePoint(edge, place.s);
  const tip = [x - deep * nx, y - deep * ny] as const;
  const line = lineOf(edgePoint(edge, place.s - wide / 2), tip, edgePoint(edge, place.s + wide / 2));
  const marks = [{ panel, mark: lineMark(`cut out for the gore${sideWord(half)}`, "place", line) }];
  const findings: Finding[] = [];
  for (const other of edges) {
    if (other === edge) continue;
    const near = nearestOn(other.line, other.arc, other.role === "feather" ? tip[0] : x, other.role === "feather" ? tip[1] : y);
    const from = other.role === "feather" ? tip : [x, y];
    const free = Math.sqrt((near.x - from[0]!) ** 2 + (near.y - from[1]!) ** 2) - (other.role === "feather" ? 0 : wide / 2 + lap);
    if (free < clearMm) findings.push(finding("gore-too-near", { half, what: other.role === "feather" ? "feather line" : "seam", freeMm: free, neededMm: clearMm }));
  }
  return { marks, findings };
}
