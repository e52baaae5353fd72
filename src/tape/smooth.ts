import { arcLengths, joined } from "#plane/along.ts";
import type { Polyline } from "#plane/outline.ts";
import { SmoothingSpline } from "#plane/smoothing-spline.ts";

/** Width of the spline that a traced edge is drawn through with, mm: a bend of 25 mm radius moves by less than 0.01 mm. */
const widthMm = 2;
const stepMm = 0.75;

/** A traced edge without the tremble of knife and picture; both ends are kept exactly. */
export function drawnThrough(line: Polyline): Polyline {
  const clean = joined([line]);
  if (clean.xy.length < 8) return clean;
  const arc = arcLengths(clean);
  const spline = new SmoothingSpline(clean.xy, arc);
  spline.fit(widthMm ** 4);
  return { xy: spline.sample(0, arc[arc.length - 1]!, stepMm) };
}
