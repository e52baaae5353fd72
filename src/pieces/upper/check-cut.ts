import { finding, type Finding } from "#base/findings.ts";
import { arcLengths, nearestOn, pointAt } from "#plane/along.ts";
import { curvatures } from "#plane/curvature.ts";
import { lengthOf } from "#plane/measure.ts";
import { partsInside } from "#plane/clip.ts";
import type { Chosen } from "../choices.ts";
import type { CutPanel } from "../edges/cut-panel.ts";
import { panelOutline } from "../edges/panel-outline.ts";
import { edgesOf, placeOn } from "../edges/places.ts";
import { edgeWord, panelWord } from "../words.ts";
import { notchDepthMm, outward } from "../marks.ts";
import { edgeLength, edgePoint } from "../net-upper.ts";
import type { NetEdge } from "../panel.ts";
import type { PieceSettings } from "../settings.ts";
import { liesOver, type CutUpper } from "./allowances.ts";
import { insidePlace } from "./marks.ts";

/** Rules and choices that contradict each other on the upper as it is cut. */
export function checkUpperCut(upper: CutUpper, settings: PieceSettings, chosen: Chosen): readonly Finding[] {
  return [...checkLaps(upper.panels, settings, chosen), ...checkSkives(upper.panels), ...checkNotches(upper), ...checkDogTail(upper.panels, settings, chosen)];
}

/** A fold in a hollow tighter than itself; a lap that reaches beyond the middle of what lies over it. */
function checkLaps(panels: readonly CutPanel[], { lapUnderMm, lapFoldMm }: PieceSettings, { seam }: Chosen): readonly Finding[] {
  if (seam !== "lapped") return [];
  return panels.flatMap(({ panel }) =>
    edgesOf(panel, "inner waist", "side").flatMap((k): readonly Finding[] => {
      if (!liesOver(panel, k)) return [];
      const edge = panel.edges[k]!;
      const hollow = curvatures(edge.line).reduce((most, bend) => Math.max(most, -bend), 0);
      const roomMm = acrossFrom(edge, panelOutline(panel));
      return [
        ...(lapFoldMm > 0 && hollow * lapFoldMm > 1 ? [finding("seam-fold-too-tight", { seam: edgeWord(edge), foldMm: lapFoldMm, radiusMm: 1 / hollow })] : []),
        ...(lapUnderMm > roomMm / 2 ? [finding("lap-too-wide", { seam: edgeWord(edge), lapMm: lapUnderMm, roomMm })] : []),
      ];
    }),
  );
}

/** What is skived reaches beyond the middle of the piece: nothing would be left of it. */
function checkSkives(panels: readonly CutPanel[]): readonly Finding[] {
  return panels.flatMap(({ panel, edges }) =>
    edges.flatMap(({ net, skive }): readonly Finding[] => {
      if (!skive) return [];
      const skiveMm = nearestOn(net.line, net.arc, ...pointAt(skive, arcLengths(skive), lengthOf(skive) / 2)).distance;
      const roomMm = acrossFrom(net, panelOutline(panel));
      return skiveMm > roomMm / 2 ? [finding("skive-too-wide", { piece: panelWord(panel), edge: edgeWord(net), skiveMm, roomMm })] : [];
    }),
  );
}

/** How far it is from the middle of an edge straight across the piece. */
function acrossFrom(edge: NetEdge, within: ReturnType<typeof panelOutline>): number {
  const s = edgeLength(edge) / 2;
  const [x, y] = edgePoint(edge, s);
  const [nx, ny] = outward(edge, s);
  const way = (mm: number): readonly [number, number] => [x - mm * nx, y - mm * ny];
  const part = partsInside(within, way(0.01), way(400))[0];
  return part ? Math.sqrt((part[1][0] - x) ** 2 + (part[1][1] - y) ** 2) : 0;
}

/** Notches in a lasting margin that is hardly wider than they are deep. */
function checkNotches({ panels, margin }: CutUpper): readonly Finding[] {
  return panels.flatMap(({ panel }, k) => {
    const places = [placeOn(panel, "toe"), placeOn(panel, "joint", "medial"), placeOn(panel, "joint", "lateral"), insidePlace(panel)];
    const marginMm = places.reduce((least, place) => (place ? Math.min(least, margin(k, place.edge)(place.s)) : least), Infinity);
    return marginMm < notchDepthMm + 1 ? [finding("notch-deeper-than-margin", { piece: panelWord(panel), notchMm: notchDepthMm, marginMm })] : [];
  });
}

function checkDogTail(panels: readonly CutPanel[], { dogTailLongMm, dogTailWideMm }: PieceSettings, { backTop, backSeam, backStrip, edge }: Chosen): readonly Finding[] {
  const back = panels.flatMap(({ panel }) => panel.edges).find((e) => e.role === "back");
  if (backTop !== "dog-tail") return [];
  if (!back) return [finding("dog-tail-has-no-place", { why: "this cut has no back seam" })];
  if (backSeam !== "closed") return [finding("dog-tail-has-no-place", { why: "the back is butted, and the zigzag would run under it" })];
  if (edge === "bagged") return [finding("dog-tail-has-no-place", { why: "a bagged topline is turned out with its lining, which leaves no tongue" })];
  if (backStrip) return [finding("dog-tail-has-no-place", { why: "the back strip lies over the top of the seam and takes its work" })];
  if (panels.every(({ snips }) => snips.length === 0)) return [finding("dog-tail-left-out", { longMm: dogTailLongMm })];
  const backMm = edgeLength(back);
  return dogTailWideMm > backMm / 3 ? [finding("dog-tail-too-wide", { wideMm: dogTailWideMm, backMm })] : [];
}
