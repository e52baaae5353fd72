import { lengthOf } from "#plane/measure.ts";
import { partsInside } from "#plane/clip.ts";
import type { Outline, Polyline } from "#plane/outline.ts";
import { Boxed } from "./boxed.ts";
import type { Mark, Xy } from "./piece.ts";

type Drawn = Exclude<Mark, { kind: "text" }>;
type Notch = Extract<Mark, { kind: "notch" }>;

/** What lies on the cutting line may lie beside it by so much, since both were faired or rounded, mm. */
const touchMm = 0.05;
/** A notch whose mouth is farther from the cutting line than this stands where a corner took its edge away, mm. */
const cornerMm = 0.5;
/** Shorter ends that a corner cuts off a line are not drawn, mm. */
const leastMm = 0.5;

/**
 * Marks as far as they lie on a piece: lines end at its cutting line, notches have their mouth on it, and what a corner leaves no place
 * for is left out. The piece is cut by `outline`; what lies on the leather that falls away could only mislead.
 */
export function onPiece(outline: Outline, marks: readonly Drawn[]): readonly Drawn[] {
  const cut = new Boxed(outline);
  return marks.flatMap((mark): readonly Drawn[] => {
    switch (mark.kind) {
      case "line":
        return linesInside(outline, mark.line, cut).map((line) => (line === mark.line ? mark : { ...mark, line }));
      case "notch":
        return notchOn(cut, mark);
      case "prick":
        return on(cut, mark.at) ? [mark] : [];
      case "arrow":
        return on(cut, mark.from) && on(cut, mark.to) ? [mark] : [];
    }
  });
}

/** The parts of a line that lie in an outline; the very line where all of it does. */
export function linesInside(outline: Outline, line: Polyline, cut: Boxed = new Boxed(outline)): readonly Polyline[] {
  const { xy } = line;
  const inside = Array.from({ length: xy.length / 2 }, (_, i) => on(cut, [xy[2 * i]!, xy[2 * i + 1]!]));
  if (inside.every(Boolean)) return [line];
  const parts: number[][] = [];
  for (let i = 0; i + 1 < inside.length; i++) {
    const p: Xy = [xy[2 * i]!, xy[2 * i + 1]!], q: Xy = [xy[2 * i + 2]!, xy[2 * i + 3]!];
    for (const [a, b] of inside[i] && inside[i + 1] ? [[p, q] as const] : partsInside(outline, p, q)) {
      const last = parts[parts.length - 1];
      if (last && Math.abs(last[last.length - 2]! - a[0]) + Math.abs(last[last.length - 1]! - a[1]) < 1e-9) last.push(...b);
      else parts.push([...a, ...b]);
    }
  }
  return parts.map((part) => ({ xy: Float64Array.from(part) })).filter((part) => lengthOf(part) > leastMm);
}

const on = (cut: Boxed, [x, y]: Xy): boolean => cut.holds(x, y) || cut.nearest(x, y).mm <= touchMm;

function notchOn(cut: Boxed, notch: Notch): readonly Notch[] {
  const { at, toward } = notch;
  const off = cut.nearest(at[0], at[1]).mm;
  if (!on(cut, toward) || off > cornerMm) return [];
  if (off <= touchMm) return [notch];
  const [dx, dy] = [at[0] - toward[0], at[1] - toward[1]];
  const depth = Math.sqrt(dx * dx + dy * dy);
  const mouth = cut.along(toward[0], toward[1], dx / depth, dy / depth, depth + cornerMm);
  return mouth && Math.abs(mouth.mm - depth) <= cornerMm ? [{ ...notch, at: [mouth.x, mouth.y] }] : [];
}
