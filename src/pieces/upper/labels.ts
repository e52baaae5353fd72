import { nearestOn } from "#plane/along.ts";
import type { Outline, Polyline } from "#plane/outline.ts";
import type { Drawn } from "../edges/edge-lines.ts";
import { edgesOf, placeOn, pointOf } from "../edges/places.ts";
import { blockOutline, placeBlock, readable, type LabelBlock } from "../labels.ts";
import { edgeLength, edgePoint } from "../net-upper.ts";
import type { NetPanel } from "../panel.ts";
import { insidePlace } from "./marks.ts";

/** The piece's name on the inner half of the vamp or amid a quarter, and `inside` along the inner waist of what goes over both halves. */
export function upperLabels(panel: NetPanel, within: Outline, marks: readonly Drawn[], lines: LabelBlock["lines"]): readonly LabelBlock[] {
  const avoid = marks.flatMap((m) => (m.kind === "line" && m.use !== "net" ? [m.line] : m.kind === "arrow" ? [{ xy: Float64Array.of(...m.from, ...m.to) }] : []));
  if (!panel.centre) return [quarterName(panel, within, avoid, lines)];
  const [throat, toe] = panel.centre;
  const joint = placeOn(panel, "joint", "medial");
  const name = placeBlock(lines, { within, avoid, near: [0.45 * toe[0] + 0.55 * throat[0], 0.45 * (joint ? pointOf(panel, joint)[1] : 50)], angleDeg: -90 });
  const inside = insideWord(panel, within, [...avoid, blockOutline(name)]);
  return inside ? [name, inside] : [name];
}

function insideWord(panel: NetPanel, within: Outline, avoid: readonly Polyline[]): LabelBlock | undefined {
  const place = insidePlace(panel);
  const topline = panel.edges[edgesOf(panel, "topline")[0] ?? -1];
  if (!place || !topline) return undefined;
  const edge = panel.edges[place.edge]!;
  const foot = edgePoint(edge, place.s);
  const above = nearestOn(topline.line, topline.arc, foot[0], foot[1]);
  const angleDeg = wayOf(edgePoint(edge, place.s - 15), edgePoint(edge, place.s + 15));
  return placeBlock([{ text: "inside", heightMm: 4 }], { within, avoid, near: [(foot[0] + above.x) / 2, (foot[1] + above.y) / 2], angleDeg });
}

/** Amid a quarter, along its feather line, below the arrow. */
function quarterName(panel: NetPanel, within: Outline, avoid: readonly Polyline[], lines: LabelBlock["lines"]): LabelBlock {
  const [topline, feather] = (["topline", "feather"] as const).map((role) => panel.edges[edgesOf(panel, role)[0] ?? 0]!) as [NetPanel["edges"][number], NetPanel["edges"][number]];
  const [high, low] = [edgePoint(topline, edgeLength(topline) / 2), edgePoint(feather, edgeLength(feather) / 2)];
  return placeBlock(lines, { within, avoid, near: [0.4 * high[0] + 0.6 * low[0], 0.4 * high[1] + 0.6 * low[1]], angleDeg: wayOf(edgePoint(feather, 0), edgePoint(feather, edgeLength(feather))) });
}

/** The way from one point to another in whole degrees, turned so that it reads. */
const wayOf = (from: readonly [number, number], to: readonly [number, number]): number => readable(Math.round((Math.atan2(to[1] - from[1], to[0] - from[0]) * 180) / Math.PI));
