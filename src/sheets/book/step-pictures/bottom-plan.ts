import { fromTipMm, tackPlaces } from "#making/steps/insole-tacks.ts";
import { evenWidth, offsetLoop } from "#plane/edge-offset.ts";
import { bounds, winding } from "#plane/measure.ts";
import type { SheetInput } from "../../input.ts";
import { halfMm, plain } from "../numbers.ts";
import { bandOf } from "./bands.ts";
import { belowTitle, fromBelow, type FromBelow } from "./from-below.ts";
import { linesOf, middleOf } from "./laid-pieces.ts";
import type { Picture } from "./sketch-lines.ts";
import { heavyMm, lightMm, plainMm, type Xy } from "./sketch.ts";

const hatchMm = 1.1;

/** Where second board and shank lie on the insole, and what of the board is thinned. */
export function boardsPlan(input: SheetInput, width: number): Picture | undefined {
  const view = fromBelow("prime-boards", input, width), board = view?.piece("second insole board"), shank = view?.piece("shank");
  if (!view || !board || !shank) return undefined;
  const { sketch, at, along, scale } = view, { pieceSettings: s } = input;
  sketch.stroke(along(board.outline.xy), heavyMm, { closed: true });
  sketch.stroke(along(shank.outline.xy), plainMm, { closed: true });
  sketch.key(`shank, its round end in front${input.made ? `; heel end ${halfMm(input.made.shank.fromSeatMm)} mm from the seat` : ""}`, at(middleOf(shank.outline)), [-0.4, 1]);
  sketch.key(`second board, ends ${plain(s.secondBehindMm)} mm behind the joint`, at([bounds(board.outline).minX + 18, 0]), [0, 1]);
  const skive = linesOf(board, "skive")[0];
  const band = skive && bandOf(board.outline, skive.line, hatchMm / scale);
  if (skive && band) {
    sketch.stroke(along(skive.line.xy), lightMm);
    for (const [a, b] of band.strokes) sketch.line(at(a), at(b), lightMm);
    sketch.key(`its front is skived to nothing over ${plain(s.secondSkiveMm)} mm`, at(band.at), [0.6, 1]);
  }
  joint(view);
  return { title: belowTitle(view), sketch };
}

/** The joint line, lightly. */
function joint({ sketch, along, piece }: FromBelow): void {
  const line = linesOf(piece("insole")!, "joint")[0];
  if (!line) return;
  sketch.stroke(along(line.line.xy), lightMm, { dashMm: [2, 0.6, 0.4, 0.6] });
  const [x, y] = along(line.line.xy).slice(0, 2) as [number, number];
  sketch.key("joint line", [x, y], [0.6, y > -5 ? 1 : -1]);
}

/** The three tacks of the insole, clear of the shank. */
export function insoleTacks(input: SheetInput, width: number): Picture | undefined {
  const view = fromBelow("tack-insoles", input, width), shank = view?.piece("shank");
  const places = input.made && tackPlaces({ made: input.made, settings: input.pieceSettings });
  if (!view || !shank || !places) return undefined;
  const { sketch, at, along, piece } = view;
  const { minX, maxX } = bounds(piece("insole")!.outline);
  sketch.stroke(along(shank.outline.xy), plainMm, { closed: true, dashMm: [1.2, 0.7] });
  const tack = (x: number, words: string): void => {
    sketch.cross(at([x, 0]), 0.9, heavyMm);
    sketch.key(words, at([x, 0]), [0, 1]);
  };
  if (places.seatMm !== undefined) tack(minX + places.seatMm, `tack, ${plain(places.seatMm)} mm from the back edge`);
  tack(minX + places.middleMm, `tack, ${plain(places.middleMm)} mm from the back edge`);
  tack(maxX - fromTipMm, `tack, ${plain(fromTipMm)} mm behind the tip`);
  sketch.key("the shank between the boards: no tack goes there", at(middleOf(shank.outline)), [0, -1]);
  return { title: belowTitle(view), sketch };
}

/** What is left of the margin, hatched, from the feather line inward. */
export function marginPlan(step: "rough-bottoms", input: SheetInput, width: number): Picture | undefined {
  const view = fromBelow(step, input, width);
  if (!view) return undefined;
  const { sketch, at, along, piece } = view, { pieceSettings: s } = input;
  const insole = piece("insole")!.outline, inward = -(s.marginLeftMm - s.insoleInMm) * winding(insole);
  const inner = offsetLoop(insole, evenWidth(insole, inward));
  sketch.stroke(along(inner.xy), heavyMm, { closed: true });
  hatch(view, insole.xy, inner.xy);
  const { minX, maxX } = bounds(inner);
  const side = (share: number): Xy => [minX + share * (maxX - minX), 0];
  sketch.key(`the margin is trimmed to this line, ${plain(s.marginLeftMm)} mm inside the feather line`, at([side(0.5)[0], bounds(inner).minY * 0.4]), [0, -1]);
  sketch.key("upper dull and fibrous all over, up to a hair inside the edge", at([side(0.12)[0], bounds(insole).minY]), [0, -1]);
  sketch.key("free for the filler", at(side(0.72)), [0, 1]);
  return { title: belowTitle(view), sketch };
}

/** Short strokes between two outlines that run side by side, point by point. */
function hatch({ sketch, at, scale }: FromBelow, outer: Float64Array, inner: Float64Array): void {
  let since = Infinity;
  for (let i = 0; i + 1 < outer.length; i += 2) {
    if (i > 0) since += Math.sqrt((outer[i]! - outer[i - 2]!) ** 2 + (outer[i + 1]! - outer[i - 1]!) ** 2);
    if (since * scale < hatchMm) continue;
    since = 0;
    sketch.line(at([outer[i]!, outer[i + 1]!]), at([inner[i]!, inner[i + 1]!]), lightMm);
  }
}

/** The filler at its place between the margins, with the line at which it may be spliced. */
export function fillerPlan(input: SheetInput, width: number): Picture | undefined {
  const view = fromBelow("fit-fillers", input, width), filler = view?.piece("bottom filler");
  if (!view || !filler) return undefined;
  const { sketch, at, along } = view, depth = input.made?.filler?.depth;
  sketch.stroke(along(filler.outline.xy), heavyMm, { closed: true });
  const { minX, maxX } = bounds(filler.outline);
  sketch.key("filler, edge to edge with the margins", at([minX + 0.55 * (maxX - minX), 0]), [0, 1]);
  sketch.key(`margin, ${plain(input.pieceSettings.marginLeftMm)} mm`, at([minX + 0.86 * (maxX - minX), bounds(filler.outline).maxY]), [1, -0.6]);
  const splice = linesOf(filler, "place", "splice")[0];
  if (splice) {
    sketch.stroke(along(splice.line.xy), lightMm, { dashMm: [1.2, 0.7] });
    const xy = along(splice.line.xy);
    sketch.key("splice, if it is cut in two", [xy[0]!, xy[1]!], [-0.5, 1]);
  }
  if (depth) {
    sketch.cross(at([depth.mostFromSeatMm, 0]), 0.8, plainMm);
    sketch.key(`deepest, ${plain(Math.round(10 * depth.mostMm) / 10)} mm`, at([depth.mostFromSeatMm, 0]), [0.4, 1]);
  }
  return { title: belowTitle(view), sketch };
}
