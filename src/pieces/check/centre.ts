import { finding, type Finding } from "#base/findings.ts";
import { directionAt, nearestOn } from "#plane/along.ts";
import { partsInside } from "#plane/clip.ts";
import type { Draft } from "../draft.ts";
import { ringEdge } from "../marks.ts";
import type { Edge } from "../net-upper.ts";
import type { Material, Xy } from "../piece.ts";
import { shownAt, type ToCheck } from "./to-check.ts";
import type { CutPanel } from "./widths.ts";

/** Most that an edge may be off square to the centre line, and over how much to either side that is taken (trade rule: square for 4 to 6 mm). */
const squareDeg = 2;
const overMm = 3;
/** A centre line drawn within a piece may end so far short of its edge, mm. */
const shortMm = 40;
const mirrored: readonly Material[] = ["upper leather", "lining leather", "toe puff"];

/** Edges square to the centre line where it meets them, so that neither a peak nor a dent shows once both halves are one: every panel's own, then those of pieces without one. */
export function checkCentre(input: ToCheck, cut: readonly CutPanel[]): readonly Finding[] {
  const panels = input.panels.flatMap((panel) =>
    panel.places.flatMap(({ name, edge: e, s }) => {
      const edge = panel.edges[e]!;
      if (!panel.centre || !((name === "throat" && edge.role === "topline") || (name === "toe" && edge.role === "feather"))) return [];
      const [from, to] = panel.centre;
      const degrees = offSquare(edge, s, from, to);
      if (degrees <= squareDeg) return [];
      const at = shownAt(input, panel.name, name === "throat" ? from : to);
      return [name === "throat" ? finding("throat-not-square", { degrees, allowedDeg: squareDeg }, at) : finding("toe-not-square", { degrees, allowedDeg: squareDeg }, at)];
    }),
  );
  const known = new Set(cut.map(({ draft }) => draft));
  const others = input.drafts.filter((d) => !d.net && !known.has(d) && mirrored.includes(d.material));
  return [...panels, ...others.flatMap((draft) => centreOf(input, draft))];
}

function centreOf(input: ToCheck, draft: Draft): readonly Finding[] {
  const mark = draft.marks.find((m) => m.kind === "line" && m.use === "centre");
  if (mark?.kind !== "line") return [];
  const { xy } = mark.line;
  const a: Xy = [xy[0]!, xy[1]!];
  const b: Xy = [xy[xy.length - 2]!, xy[xy.length - 1]!];
  const ring = ringEdge(draft.outline);
  return [[a, b], [b, a]].flatMap(([inner, end]) => {
    const beyond = farther(inner!, end!, shortMm);
    const exit = partsInside(draft.outline, [(a[0] + b[0]) / 2, (a[1] + b[1]) / 2], beyond)[0]?.[1];
    // Where its edge lies farther on, the centre line belongs to another part of the piece.
    if (!exit || Math.abs(exit[0] - beyond[0]) + Math.abs(exit[1] - beyond[1]) < 0.01) return [];
    const degrees = offSquare(ring, nearestOn(ring.line, ring.arc, exit[0], exit[1]).s, a, b);
    const where = end![0] > inner![0] ? "front" : "back";
    return degrees <= squareDeg ? [] : [finding("edge-not-square", { piece: draft.name, where, degrees, allowedDeg: squareDeg }, shownAt(input, draft.ground, exit))];
  });
}

/** Angle between the edge, over a few millimetres to either side, and the way across the centre line, degrees. */
function offSquare({ line, arc }: Edge, s: number, from: Xy, to: Xy): number {
  const [cx, cy] = [to[0] - from[0], to[1] - from[1]];
  const [dx, dy] = directionAt(line, arc, s, overMm);
  return (Math.atan2(Math.abs(dx * cx + dy * cy), Math.abs(dx * cy - dy * cx)) * 180) / Math.PI;
}

function farther([ax, ay]: Xy, [bx, by]: Xy, mm: number): Xy {
  const long = Math.sqrt((bx - ax) * (bx - ax) + (by - ay) * (by - ay));
  return [bx + (mm * (bx - ax)) / long, by + (mm * (by - ay)) / long];
}
