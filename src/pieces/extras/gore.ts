import { finding, type Finding } from "#base/findings.ts";
import { halfName } from "#base/sentences/names.ts";
import { halves, type Half } from "#lines/feather.ts";
import { nearestOn } from "#plane/along.ts";
import { contains } from "#plane/inside.ts";
import { panelOutline } from "../edges/panel-outline.ts";
import { placeOn } from "../edges/places.ts";
import { lineMark, outward } from "../marks.ts";
import { edgePoint } from "../net-upper.ts";
import type { NetPanel, NetPlace } from "../panel.ts";
import type { Xy } from "../piece.ts";
import type { PieceSettings } from "../settings.ts";
import { sideWord } from "../words.ts";
import { goreElastic, underLap } from "./gore-elastic.ts";
import { cannot, toplineOutMm, type Extra, type ExtraInput, type PlaceMark } from "./extra.ts";
import { lineOf } from "./shapes.ts";
import { toplinePlace } from "./topline-way.ts";

/** What must stay between the gore's tip and the feather line, and between its elastic and a seam, mm. */
const clearMm = 10;

/** Elastic set behind a cut in the topline, at the lowest place of either side. */
export function gore(input: ExtraInput): Extra {
  const { panels, settings, chosen, labels } = input;
  const marks = goreMarks(panels, settings, toplineOutMm(settings, chosen));
  return {
    drafts: marks.length > 0 ? [goreElastic(settings, labels, marks.length)] : [],
    marks,
    findings: [
      ...halves.flatMap((half) => roomFor(input, half)),
      ...(chosen.strap && input.onLast ? besideStrap(input) : []),
      ...(marks.length > 0 && chosen.edge === "taped" && settings.toplineFoldMm > 0 ? [finding("gore-cuts-tape", {})] : []),
    ],
  };
}

/** Where it is cut out on every panel that has a lowest place with leather below it, beginning at the cutting line `outMm` outside the topline. */
export function goreMarks(panels: readonly NetPanel[], settings: Pick<PieceSettings, "goreWideMm" | "goreDeepMm">, outMm: number): readonly PlaceMark[] {
  return halves.flatMap((half): readonly PlaceMark[] => {
    const found = lowestOf(panels, half);
    const tip = found && tipOf(found, settings.goreDeepMm);
    if (!found || !tip) return [];
    return [{ panel: found.panel, mark: lineMark(`cut out for the gore${sideWord(half)}`, "place", cutLine(found, tip, settings, outMm)) }];
  });
}

interface Lowest {
  readonly panel: number;
  readonly on: NetPanel;
  readonly place: NetPlace;
}

function lowestOf(panels: readonly NetPanel[], half: Half): Lowest | undefined {
  const panel = panels.findIndex((p) => placeOn(p, "lowest", half));
  const on = panels[panel], place = on && placeOn(on, "lowest", half);
  return place && { panel, on, place };
}

/** The gore's lower end, where that still lies in the piece. */
function tipOf({ on, place }: Lowest, deepMm: number): Xy | undefined {
  const edge = on.edges[place.edge]!;
  const [nx, ny] = outward(edge, place.s);
  const [x, y] = edgePoint(edge, place.s);
  const tip: Xy = [x - deepMm * nx, y - deepMm * ny];
  return contains(panelOutline(on), ...tip) ? tip : undefined;
}

/** Both edges of the cut and their way on through what is turned over, where they are their own mirror images in the topline. */
function cutLine({ on, place }: Lowest, tip: Xy, { goreWideMm: wide, goreDeepMm: deep }: Pick<PieceSettings, "goreWideMm" | "goreDeepMm">, outMm: number) {
  const edge = on.edges[place.edge]!;
  const [before, after] = [edgePoint(edge, place.s - wide / 2), edgePoint(edge, place.s + wide / 2)];
  if (outMm === 0) return lineOf(before, tip, after);
  const [nx, ny] = outward(edge, place.s);
  // As far outward as the tip lies inward, and toward the middle by the same share.
  const beyond = ([x, y]: Xy): Xy => {
    const middle = edgePoint(edge, place.s);
    const share = outMm / deep;
    return [x + share * (middle[0] - x) + outMm * nx, y + share * (middle[1] - y) + outMm * ny];
  };
  return lineOf(beyond(before), before, tip, after, beyond(after));
}

/** A strap that is sewn on where the topline is cut open tears out. */
function besideStrap({ panels, settings }: ExtraInput): readonly Finding[] {
  return halves.flatMap((half) => {
    const at = toplinePlace(panels, half, settings.strapBehindThroatMm);
    const lowest = at && placeOn(panels[at.panel]!, "lowest", half);
    if (!at || lowest?.edge !== at.edge) return [];
    const freeMm = Math.abs(at.s - lowest.s) - settings.strapWidthMm / 2 - settings.goreWideMm / 2 - underLap(settings).topMm;
    return freeMm < 0 ? [finding("gore-under-strap", { half, byMm: -freeMm })] : [];
  });
}

/** Whether there is room for the gore of one side. */
function roomFor({ panels, settings }: ExtraInput, half: Half): readonly Finding[] {
  const found = lowestOf(panels, half);
  if (!found) return [cannot("elastic gore", "the lowest place of the topline was not found", "mark it by hand")];
  const tip = tipOf(found, settings.goreDeepMm);
  const { on, place } = found;
  if (!tip) return [cannot("elastic gore", `on the ${halfName(half)} side there is no leather any more ${settings.goreDeepMm} mm below the topline`, "make the gore less deep")];
  const edge = on.edges[place.edge]!;
  const top = edgePoint(edge, place.s);
  return on.edges.flatMap((other): readonly Finding[] => {
    if (other === edge) return [];
    const below = other.role === "feather";
    const from = below ? tip : top;
    const near = nearestOn(other.line, other.arc, ...from);
    const freeMm = near.distance - (below ? 0 : settings.goreWideMm / 2 + underLap(settings).topMm);
    return freeMm < clearMm ? [finding("gore-too-near", { half, what: below ? "feather line" : "seam", freeMm, neededMm: clearMm })] : [];
  });
}
