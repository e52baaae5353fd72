import type { Last, Point3, SurfaceCurve } from "#last/last.ts";
import { arcNearest, curveLength, curveOf, distanceSquared, nearestOnSegment, pointOn, upTo } from "#last/surface-curve.ts";
import { halfSign, type Half } from "#lines/feather.ts";
import type { Lines } from "#lines/lines.ts";
import { Sectioner, type Section } from "#mesh/section.ts";
import { planeThrough } from "#shell/girths.ts";

/** The joint line of one half: a tape from its joint point over the forepart, in the plane of both joint points and the vamp point. */
export interface JointTape {
  readonly lengthMm: number;
  /** Where it leaves what the upper covers. */
  readonly endsAt: "topline" | "centre";
  readonly at: Point3;
  /** x0 y0 z0 … */
  readonly way: Float64Array;
}

/** A topline may be drawn so far beside the surface that the tape lies on, mm. */
const besideMm = 1;

/** The tape up to the topline, or to the centre where the throat lies behind it; nothing where the last has no surface there. */
export function jointTape(last: Last, lines: Lines, half: Half): JointTape | undefined {
  const { jointMedial, jointLateral, vampPoint } = last.landmarks;
  if (last.mesh.triangles.length === 0) return undefined;
  const { through, normal } = planeThrough(jointMedial, jointLateral, vampPoint);
  const start = half === "medial" ? jointMedial : jointLateral;
  const up = overTheTop(new Sectioner(last.mesh).cut(through, normal), start, halfSign(last, half));
  if (!up) return undefined;
  const topline = half === "medial" ? lines.toplineMedial : lines.toplineLateral;
  const met = crossings(topline, (p) => normal[0] * (p[0] - through[0]) + normal[1] * (p[1] - through[1]) + normal[2] * (p[2] - through[2]))
    .map((p) => ({ p, mm: arcNearest(up, p) }))
    .filter(({ p, mm }) => distanceSquared(p, pointOn(up, mm)) < besideMm * besideMm)
    .sort((a, b) => a.mm - b.mm)[0];
  const lengthMm = met?.mm ?? curveLength(up);
  const way = upTo(up, lengthMm);
  return { lengthMm, endsAt: met ? "topline" : "centre", at: pointOn(way, lengthMm), way: way.points };
}

/** The section from a point of the feather line over the top to the centre plane; `side` is the sign of y of the half. */
function overTheTop(sections: readonly Section[], from: Point3, side: 1 | -1): SurfaceCurve | undefined {
  let best: { readonly section: Section; readonly segment: number } | undefined, least = Infinity;
  for (const section of sections) {
    const n = section.points.length / 3;
    for (let i = 0; i < (section.closed ? n : n - 1); i++) {
      const { square } = nearestOnSegment(section.points, i, (i + 1) % n, from);
      if (square < least) [best, least] = [{ section, segment: i }, square];
    }
  }
  if (!best) return undefined;
  const ways = ([1, -1] as const).map((step) => walked(best.section, best.segment, from, side, step)).filter((way) => way !== undefined);
  // Over the top the centre is reached higher than along the bottom.
  return ways.sort((a, b) => b.points[b.points.length - 1]! - a.points[a.points.length - 1]!)[0];
}

function walked({ points: p, closed }: Section, segment: number, from: Point3, side: 1 | -1, step: 1 | -1): SurfaceCurve | undefined {
  const n = p.length / 3;
  const out: number[] = [...from];
  let i = step === 1 ? segment + 1 : segment;
  for (let count = 0; count < n; count++, i += step) {
    if (closed) i = (i + n) % n;
    else if (i < 0 || i >= n) return undefined;
    const [x, y, z] = [p[3 * i]!, p[3 * i + 1]!, p[3 * i + 2]!];
    if (side * y > 0) {
      out.push(x, y, z);
      continue;
    }
    const k = out.length - 3, t = out[k + 1]! / (out[k + 1]! - y);
    out.push(out[k]! + t * (x - out[k]!), 0, out[k + 2]! + t * (z - out[k + 2]!));
    return curveOf(out);
  }
  return undefined;
}

/** Where a curve passes through zero of a height over a plane. */
function crossings({ points: p }: SurfaceCurve, over: (p: Point3) => number): readonly Point3[] {
  const found: Point3[] = [];
  for (let i = 0; i + 5 < p.length; i += 3) {
    const a: Point3 = [p[i]!, p[i + 1]!, p[i + 2]!], b: Point3 = [p[i + 3]!, p[i + 4]!, p[i + 5]!];
    const ha = over(a), hb = over(b);
    if (ha >= 0 === hb >= 0) continue;
    const t = ha / (ha - hb);
    found.push([a[0] + t * (b[0] - a[0]), a[1] + t * (b[1] - a[1]), a[2] + t * (b[2] - a[2])]);
  }
  return found;
}
