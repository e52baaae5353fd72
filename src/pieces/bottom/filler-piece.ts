import { selfCrossing } from "#plane/crossing.ts";
import { area, bounds } from "#plane/measure.ts";
import type { Outline } from "#plane/outline.ts";
import type { Draft } from "../draft.ts";
import type { Labels } from "../label-text.ts";
import type { LabelBlock } from "../labels.ts";
import { acrossAt, lineMark } from "../marks.ts";
import type { Xy } from "../piece.ts";
import type { PieceSettings } from "../settings.ts";
import { behindJoint, inside, straight } from "./bottom-lines.ts";
import { drawnInRing, flatPiece, untitled, type DraftMark } from "./flat-piece.ts";
import type { NetBottom } from "./net-bottom.ts";

/** A filler narrower or shorter than this is none: the margins meet, mm. */
const leastMm = 8;

/** What lies between the lasted margins, trimmed; nothing where they meet. */
export function fillerOutline(net: NetBottom, reachMm: number): Outline | undefined {
  const outline = drawnInRing(net, reachMm);
  const box = bounds(outline);
  const sound = box.maxX - box.minX < net.toePoint[0] - reachMm && box.maxX - box.minX > leastMm && box.maxY - box.minY > leastMm && area(outline) > leastMm * leastMm && !selfCrossing(outline);
  return sound ? outline : undefined;
}

/** How deep the hollow is: at most, and at a place of the flat bottom of a right one, mm. */
export interface HollowDepth {
  readonly mostMm: number;
  readonly at: (x: number, y: number) => number;
}

/** The filler in one, with the line at which it is spliced behind the tread where it is cut in two; its thickness is written along its middle. */
export function cutFiller(net: NetBottom, outline: Outline, reachMm: number, depth: HollowDepth | undefined, settings: PieceSettings, labels: Labels): Draft {
  const splice = inside(outline, straight(behindJoint(net, settings.secondBehindMm)));
  const thick = depth ? thicknesses(net, outline, depth) : [];
  return flatPiece(net, {
    name: "bottom filler", material: "filler", notes: [...(depth ? [`up to ${depth.mostMm.toFixed(1)} mm thick,`, "mm at the crosses"] : []), "seen from above"],
    outline, margin: () => -reachMm, labels: untitled(labels),
    marks: [...(splice ? [lineMark("splice, if cut in two", "place", splice)] : []), ...thick.flatMap(({ at }) => cross(at))],
    written: thick.map(({ mm, at: [x, y] }): LabelBlock => ({ lines: [{ text: mm.toFixed(1), heightMm: 2 }], at: [x, y + (y < 0 ? -figureMm : figureMm)], angleDeg: 0 })),
  });
}

const writtenAt = [0.12, 0.22, 0.35, 0.48, 0.62, 0.78, 0.88] as const;

interface ThickAt {
  readonly at: Xy;
  readonly mm: number;
}

/** Thicknesses in the middle between inner and outer edge, a little beside the centre line so that they can be read. */
function thicknesses(net: NetBottom, outline: Outline, { at }: HollowDepth): readonly ThickAt[] {
  return writtenAt.flatMap((share): readonly ThickAt[] => {
    const x = share * net.toePoint[0];
    const across = acrossAt(outline, x);
    if (!across || across[1][1] - across[0][1] < leastMm) return [];
    const y = (across[0][1] + across[1][1]) / 2;
    const clear = Math.abs(y) >= besideMm ? y : y > 0 ? besideMm : -besideMm;
    return [{ at: [x, clear], mm: at(x, clear) }];
  });
}

/** Places keep this far from the centre line; their cross is so wide, and the figure stands so far beside it; mm. */
const besideMm = 2.6, crossMm = 2, figureMm = 3;

/** A small cross at a place, named by the figure beside it. */
const cross = ([x, y]: Xy): readonly DraftMark[] => [
  lineMark("", "place", { xy: Float64Array.of(x - crossMm / 2, y, x + crossMm / 2, y) }),
  lineMark("", "place", { xy: Float64Array.of(x, y - crossMm / 2, x, y + crossMm / 2) }),
];
