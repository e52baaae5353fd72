import { offsetEdge } from "#plane/edge-offset.ts";
import { area, bounds } from "#plane/measure.ts";
import type { Outline } from "#plane/outline.ts";
import type { Draft } from "../draft.ts";
import type { Labels } from "../label-text.ts";
import { lineMark } from "../marks.ts";
import type { PieceSettings } from "../settings.ts";
import { behindJoint, inside, straight } from "./bottom-lines.ts";
import { flatPiece, untitled } from "./flat-piece.ts";
import type { NetBottom } from "./net-bottom.ts";

/** A filler narrower or shorter than this is none: the margins meet, mm. */
const leastMm = 8;

/** What lies between the lasted margins, trimmed; nothing where they meet. */
export function fillerOutline(net: NetBottom, reachMm: number): Outline | undefined {
  const { line } = net.ring;
  const inner = offsetEdge(line, new Float64Array(line.xy.length / 2).fill(-reachMm));
  const outline: Outline = { xy: inner.xy.slice(0, inner.xy.length - 2) };
  const box = bounds(outline);
  const sound = box.maxX - box.minX < net.toePoint[0] - reachMm && box.maxX - box.minX > leastMm && box.maxY - box.minY > leastMm && area(outline) > leastMm * leastMm;
  return sound ? outline : undefined;
}

/** The filler in one, with the line at which it is spliced behind the tread where it is cut in two. */
export function cutFiller(net: NetBottom, outline: Outline, reachMm: number, mostMm: number | undefined, settings: PieceSettings, labels: Labels): Draft {
  const splice = inside(outline, straight(behindJoint(net, settings.secondBehindMm)));
  const notes = [...(mostMm === undefined ? [] : [`up to ${mostMm.toFixed(1)} mm thick`]), "seen from above"];
  return flatPiece(net, {
    name: "bottom filler", material: "filler", notes, outline, margin: () => -reachMm, labels: untitled(labels),
    marks: splice ? [lineMark("splice, if cut in two", "place", splice)] : [],
  });
}
