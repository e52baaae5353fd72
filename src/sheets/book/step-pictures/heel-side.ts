import { capital } from "#base/listed.ts";
import { nailedLifts } from "#making/needs/nailed-lifts.ts";
import type { BottomMade } from "#pieces/bottom/made.ts";
import type { Piece } from "#pieces/piece.ts";
import { arcLengths, nearestOn, pointAt } from "#plane/along.ts";
import { bounds } from "#plane/measure.ts";
import type { SheetInput } from "../../input.ts";
import { thinned } from "./laid-pieces.ts";
import { pieceThat } from "./piece-that.ts";
import { besideMm, scaleFor, type Picture } from "./sketch-lines.ts";
import { heavyMm, lightMm, plainMm, Sketch, type Xy } from "./sketch.ts";

type Heel = NonNullable<BottomMade["heel"]>;
/** So much of the sole is shown before the breast, mm. */
const beforeMm = 10;
const even = (a: number, b: number): boolean => Math.abs(a - b) < 0.05;
const tenth = (mm: number): string => (Math.round(10 * mm) / 10).toFixed(1);

/** The heel from its outer side, the seat level, its layers laid apart below the sole: nothing where there is no heel to build. */
export function heelSide({ pieces, made, pieceSettings: s }: SheetInput, width: number): Picture | undefined {
  const heel = made?.heel;
  if (!heel || heel.layers.length === 0) return undefined;
  const edge = edgeOf(heel, pieces), split = pieceThat(pieces, "split lift") !== undefined && edge.length > 1;
  const toX = Math.max(...heel.layers.flatMap(({ name }) => ends(pieces, name) ?? [0]));
  const { scale, words } = scaleFor(toX + beforeMm + 4, heel.backMm + heel.splitMostMm + s.soleMm, width - 2 * besideMm - 1, 30);
  const draw = new Sketch(), [fromX] = ends(pieces, heel.layers[0]!.name) ?? [0], over = split ? apartMm : 0;
  const closed = (points: readonly Xy[], up: number, name?: string): void => draw.stroke(points.flatMap(([x, y]) => [scale * x, scale * y + up]), plainMm, { closed: true, ...(name && { name }) });
  // The sole's lower edge is the upper one of the split lift, and goes on ahead of the breast as it leaves it.
  const seatEdge: readonly Xy[] = [[fromX, edge[0]?.[1] ?? 0], ...edge], ahead: Xy = [toX + beforeMm, seatEdge[seatEdge.length - 1]![1]], lower = [...seatEdge, ahead];
  closed([...lower, ...[...lower].reverse().map(([x, y]): Xy => [x, y + s.soleMm])], over);
  draw.key(`sole, ${tenth(s.soleMm)} mm`, [scale * ahead[0], scale * (ahead[1] + s.soleMm / 2) + over], [1, 0]);
  if (split) {
    closed([...seatEdge, [seatEdge[seatEdge.length - 1]![0], 0], [fromX, 0]], 0, "picture-build-heels-split-lift");
    draw.key(`split lift, up to ${tenth(heel.splitMostMm)} mm at its edge, flush with the sole's`, [scale * seatEdge[seatEdge.length - 1]![0], scale * seatEdge[seatEdge.length - 1]![1] / 2], [1, 0.3]);
  }
  layers(draw, pieces, heel, scale);
  nails(draw, pieces, { made, settings: s }, scale);
  return { title: `The heel from outside, layers laid apart, ${words}`, sketch: draw };
}

/** Between two layers on paper, mm. */
const apartMm = 2.2;

function layers(draw: Sketch, pieces: readonly Piece[], { layers: all }: Heel, scale: number): void {
  let back = 0, breast = 0;
  all.forEach(({ name, backMm, breastMm }, k) => {
    const [x0, x1] = ends(pieces, name) ?? [0, 60], down = apartMm * (k + 1);
    const xy = [x0, -back, x1, -breast, x1, -breast - breastMm, x0, -back - backMm].map((v, i) => scale * v - (i % 2 === 1 ? down : 0));
    draw.stroke(xy, name === "top piece" ? heavyMm / 1.4 : plainMm, { closed: true, name: `picture-build-heels-${name.replaceAll(" ", "-")}` });
    const thick = even(backMm, breastMm) ? `${tenth(backMm)} mm` : `${tenth(backMm)} mm at the back, ${tenth(breastMm)} at the breast`;
    draw.key(`${name}, ${thick}`, [scale * x1, -scale * (breast + breastMm / 2) - down], [1, 0]);
    back += backMm;
    breast += breastMm;
  });
}

/** Nails ready to be driven: below their lift, as long as they are. */
function nails(draw: Sketch, pieces: readonly Piece[], own: { readonly made: BottomMade; readonly settings: SheetInput["pieceSettings"] }, scale: number): void {
  const all = own.made.heel!.layers;
  for (const { name, nailMm, count } of nailedLifts(pieces.filter(({ side }) => side === "right"), own)) {
    const piece = pieceThat(pieces, name), where = ends(pieces, name);
    if (!piece || !where || nailMm === undefined) continue;
    const k = all.findIndex((layer) => layer.name === name), [x0, x1] = where;
    const sum = (of: "backMm" | "breastMm"): number => all.slice(0, k + 1).reduce((mm, layer) => mm + layer[of], 0);
    for (const m of piece.marks) {
      if (m.kind !== "prick" || m.name !== "nails") continue;
      const x = m.at[0], foot = -scale * (sum("backMm") + ((x - x0) / (x1 - x0)) * (sum("breastMm") - sum("backMm"))) - apartMm * (k + 1);
      // The tip stands as far above the lift's lower face as the nail is long; what lies apart is passed over.
      draw.line([scale * x, foot], [scale * x, foot + scale * nailMm + apartMm * (k + 2)], lightMm, { dashMm: [1, 0.6] });
      draw.line([scale * x - 0.7, foot], [scale * x + 0.7, foot], plainMm);
    }
    draw.told.push(["", `Broken lines: ${count} nails of ${nailMm} mm through ${name}, heads sunk`]);
  }
}

/** From where to where a piece of the heel goes along the shoe. */
function ends(pieces: readonly Piece[], name: string): Xy | undefined {
  const piece = pieceThat(pieces, name);
  if (!piece) return undefined;
  const { minX, maxX } = bounds(piece.outline);
  return [minX, maxX];
}

/** The sole's edge over the level seat on the outer side, from the back forward: along the shoe, and how far it stands off. */
function edgeOf({ splitEdge }: Heel, pieces: readonly Piece[]): readonly Xy[] {
  const insole = pieceThat(pieces, "insole");
  if (!insole) return [];
  const ring = { xy: Float64Array.from([...insole.outline.xy, insole.outline.xy[0]!, insole.outline.xy[1]!]) }, arc = arcLengths(ring), whole = arc[arc.length - 1]!;
  const seat = nearestOn(ring, arc, 0, 0).s, ahead = pointAt(ring, arc, (seat + 20) % whole)[1] < 0 ? 1 : -1;
  return splitEdge.filter(({ alongMm }) => alongMm <= 0).map(({ alongMm, offMm }): Xy => [pointAt(ring, arc, (((seat - ahead * alongMm) % whole) + whole) % whole)[0], offMm]).sort((a, b) => a[0] - b[0]);
}

/** The horseshoe of the split lift from above, and cut across: thick at its edge, nothing inside. */
export function splitLift({ pieces, made, pieceSettings: s }: SheetInput, width: number): Picture | undefined {
  const piece = pieceThat(pieces, "split lift"), heel = made?.heel;
  if (!piece || !heel) return undefined;
  const { minX, minY, maxX, maxY } = bounds(piece.outline), wide = s.splitLiftWideMm;
  const { scale, words } = scaleFor(maxX - minX, maxY - minY, width - 2 * besideMm, 26);
  const draw = new Sketch();
  const at = (x: number, y: number): Xy => [scale * (x - minX), scale * (y - minY)];
  draw.stroke(thinned(piece.outline.xy).flatMap(([x, y]) => at(x, y)), plainMm, { closed: true, name: "picture-prime-heels-split-lift" });
  const y = (minY + maxY) / 2;
  draw.key("pared to nothing along its inner edge", at(minX + wide, y), [1, 0]);
  const [sx, sy] = [scale * (maxX - minX) * 0.5, -7];
  draw.line(at(minX - 1.5, y), at(minX + wide + 1.5, y), lightMm, { dashMm: [2, 0.6, 0.4, 0.6] });
  draw.stroke([sx, sy, sx + wide, sy, sx, sy + heel.splitMostMm], heavyMm / 1.4, { closed: true, name: "picture-prime-heels-wedge" });
  draw.key(`cut across, true size: ${tenth(heel.splitMostMm)} mm at the most, over ${wide} mm`, [sx, sy + heel.splitMostMm / 2], [-1, 0]);
  return { title: `${capital(piece.name)} from above, ${words}`, sketch: draw };
}
