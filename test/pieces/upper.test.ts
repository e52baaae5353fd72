import { describe, expect, test } from "vitest";
import { cutLining } from "#pieces/lining/one.ts";
import { backReduction } from "#pieces/lining/reduction.ts";
import { lastingMargin } from "#pieces/margins.ts";
import { edgeLength, edgePoint, netOutline, netUpper, type Edge, type NetUpper } from "#pieces/net-upper.ts";
import { pieceRulesFor, pieceSettingsFrom } from "#pieces/rules.ts";
import { arcLengths, nearestOn } from "#plane/along.ts";
import { bendChanges } from "#plane/curvature.ts";
import { contains } from "#plane/inside.ts";
import { area, lengthOf } from "#plane/measure.ts";
import { reflect } from "#plane/join.ts";
import { flatPump } from "../support/flat-pump.ts";
import { cutUpper } from "../support/whole-cut.ts";

const labels = { title: "Practice pair", size: "38" };
const pump = flatPump("right", 0.02);
const net = netUpper(pump.last, pump.lines, pump.flat);
// Distinct widths, so that a mix-up of zones or sides cannot pass.
const settings = pieceSettingsFrom(pieceRulesFor(pump.last), {
  lastingToeMm: 21, lastingToeSidesMm: 17, lastingForepartMm: 18, lastingOuterWaistMm: 16, lastingInnerWaistMm: 20, lastingHeelMm: 19,
  toplineFoldMm: 4.5, backSeamMm: 1.5,
});

/** Nearest place on an edge; `inner` is false within a millimetre of its ends, where corners are made by rule. */
function foot(edge: Edge, x: number, y: number) {
  const f = nearestOn(edge.line, edge.arc, x, y);
  return { ...f, inner: f.s > 1 && f.s < edgeLength(edge) - 1 };
}
const nearestEdge = (x: number, y: number): keyof NetUpper & ("feather" | "topline" | "backMedial" | "backLateral") => {
  const edges = ["feather", "topline", "backMedial", "backLateral"] as const;
  return edges.reduce((a, b) => (foot(net[b], x, y).distance < foot(net[a], x, y).distance ? b : a));
};

describe("net upper", () => {
  test("passes within 0.05 mm of every point of the flat shell's edges", () => {
    // The fixture shakes its edges by 0.02 mm; the back edges are also made equal, which moves the seat.
    const { uv, shell } = pump.flat;
    for (const v of [...shell.edges.toplineMedial, ...shell.edges.toplineLateral]) {
      expect(foot(net.topline, uv[2 * v]!, uv[2 * v + 1]!).distance).toBeLessThan(0.05);
    }
    const moved = Math.abs(net.backDifferenceMm) / 2;
    for (const v of [...shell.edges.featherMedial, ...shell.edges.featherLateral]) {
      expect(foot(net.feather, uv[2 * v]!, uv[2 * v + 1]!).distance).toBeLessThan(0.05 + moved);
    }
  });

  test("back edges are equally long", () => {
    expect(Math.abs(lengthOf(net.backMedial.line) - lengthOf(net.backLateral.line))).toBeLessThan(1e-9);
  });

  test("no bump that the smooth line has not: bends change as often as on the line drawn by formula", () => {
    const smooth = flatPump("right", 0);
    const formula = netUpper(smooth.last, smooth.lines, smooth.flat);
    const shaken = flatPump("right", 0.03);
    const faired = netUpper(shaken.last, shaken.lines, shaken.flat);
    for (const edge of ["feather", "topline"] as const) expect(bendChanges(faired[edge].line)).toBe(bendChanges(formula[edge].line));
  });

  test("carries places over from the last: the fixture's last is its own flat", () => {
    const { landmarks } = pump.last;
    const [jx, jy] = edgePoint(net.feather, net.places.jointMedial);
    expect(Math.hypot(jx - landmarks.jointMedial[0], jy - landmarks.jointMedial[1])).toBeLessThan(0.1);
    for (const [k, mark] of pump.lines.quarterHeights.medial.entries()) {
      const [x, y] = edgePoint(net.topline, net.places.quarterMedial[k]!);
      expect(Math.hypot(x - mark.at[0], y - mark.at[1])).toBeLessThan(0.1);
    }
    expect(Math.hypot(...edgePoint(net.feather, net.places.toe))).toBeLessThan(0.05);
  });
});

describe("upper with allowances", () => {
  const upper = cutUpper(net, settings, labels);
  const margin = lastingMargin(net, settings);

  test("zones have their widths: toe, toe sides, forepart to joint, waists, heel", () => {
    const { toe, jointMedial, jointLateral, waistMedial, waistLateral, breastMedial, breastLateral } = net.places;
    expect(margin(toe)).toBe(21);
    expect([margin(toe - 40), margin(toe + 40)]).toEqual([17, 17]);
    expect([margin(jointMedial), margin(jointLateral)]).toEqual([18, 18]);
    expect(margin(waistMedial)).toBe(20);
    expect(margin(waistLateral)).toBe(16);
    expect([margin(breastMedial), margin(breastLateral), margin(0), margin(edgeLength(net.feather))]).toEqual([19, 19, 19, 19]);
  });

  test("every point of the lasting edge lies at its zone's width from the feather, of the fold and seams likewise, ±0.05 mm", () => {
    const seen = { feather: 0, topline: 0, backMedial: 0, backLateral: 0 };
    const { xy } = upper.outline;
    for (let i = 0; i < xy.length; i += 2) {
      const edge = nearestEdge(xy[i]!, xy[i + 1]!);
      const f = foot(net[edge], xy[i]!, xy[i + 1]!);
      if (!f.inner) continue;
      seen[edge]++;
      const wanted = edge === "feather" ? margin(f.s) : edge === "topline" ? 4.5 : 1.5;
      expect(Math.abs(f.distance - wanted), `${edge} at ${f.s.toFixed(1)}`).toBeLessThan(0.05);
    }
    // Guard: each edge was really seen, about a point a millimetre.
    expect(seen.feather).toBeGreaterThan(500);
    expect(seen.topline).toBeGreaterThan(350);
    expect(seen.backMedial).toBeGreaterThan(40);
    expect(seen.backLateral).toBeGreaterThan(40);
  });

  test("area grows by the strips: Steiner's formula along curved edges within 1 %", () => {
    // Strip beside an edge: ∫ w ds + ∫ w² κ / 2 ds; κ integrates to the turning of the edge, taken from its end directions.
    let strips = 1.5 * (lengthOf(net.backMedial.line) + lengthOf(net.backLateral.line)) + 4.5 * lengthOf(net.topline.line);
    const arc = arcLengths(net.feather.line);
    for (let i = 1; i < arc.length; i++) strips += ((margin(arc[i]!) + margin(arc[i - 1]!)) / 2) * (arc[i]! - arc[i - 1]!);
    const turning = turned(net.feather);
    const hollow = turned(net.topline);
    const expected = area(netOutline(net)) + strips + (18.5 * 18.5 * turning) / 2 + (4.5 * 4.5 * hollow) / 2;
    expect(Math.abs(area(upper.outline) / expected - 1)).toBeLessThan(0.01);
  });

  test("the fold comes down inside the piece at both back corners, its end exactly on the seam's cutting edge", () => {
    const fold = upper.marks.find((m) => m.kind === "line" && m.use === "fold");
    if (fold?.kind !== "line") throw new Error("no fold line");
    const line = fold.line.xy;
    const ends = [[line.subarray(0, 2), line.subarray(2, 4)], [line.subarray(line.length - 2), line.subarray(line.length - 4, line.length - 2)]] as const;
    for (const [corner, next] of ends) {
      const [cx, cy] = [corner[0]!, corner[1]!];
      const size = Math.hypot(next[0]! - cx, next[1]! - cy);
      const along = [(next[0]! - cx) / size, (next[1]! - cy) / size] as const;
      // Height over the fold line: positive on the side away from the seat.
      const height = (x: number, y: number): number => (x - cx) * along[1] - (y - cy) * along[0];
      const [sx, sy] = cy > 0 ? edgePoint(net.backMedial, 0) : edgePoint(net.backLateral, edgeLength(net.backLateral));
      const above = (x: number, y: number): number => (height(sx, sy) > 0 ? -height(x, y) : height(x, y));
      let folded = 0;
      const { xy } = upper.outline;
      for (let i = 0; i < xy.length; i += 2) {
        const near = Math.hypot(xy[i]! - cx, xy[i + 1]! - cy);
        if (near > 5.2 || above(xy[i]!, xy[i + 1]!) < 0.02) continue;
        const down = reflect([xy[i]!, xy[i + 1]!], [cx, cy], along);
        const ring = { xy: Float64Array.of(...xy, xy[0]!, xy[1]!) };
        const out = contains(upper.outline, ...down) ? 0 : nearestOn(ring, arcLengths(ring), ...down).distance;
        expect(out).toBeLessThan(0.05);
        folded++;
      }
      expect(folded).toBeGreaterThan(1);
    }
  });
});

describe("lining", () => {
  const lining = cutLining(net, settings, labels);

  test("lies inside the upper but for the trim above the topline, and is smaller than the upper", () => {
    const upper = cutUpper(net, settings, labels);
    const { xy } = lining.outline;
    let outside = 0;
    for (let i = 0; i < xy.length; i += 2) {
      if (!contains(upper.outline, xy[i]!, xy[i + 1]!)) outside++;
    }
    expect(outside).toBe(0);
    expect(area(lining.outline)).toBeLessThan(area(upper.outline));
  });

  test("is taken in at the back by 2.5, 3.5 and 4.5 mm from topline to feather", () => {
    const up = backReduction(net.backMedial, settings, false);
    const down = backReduction(net.backLateral, settings, true);
    expect([up[0], up[up.length - 1]]).toEqual([4.5, 2.5]);
    expect([down[0], down[down.length - 1]]).toEqual([2.5, 4.5]);
    expect(Math.abs(up[up.length >> 1]! - 3.5)).toBeLessThan(0.1);
  });

  test("at the toe its lasting edge lies 4 mm and the toe's 2.5 mm inside the upper's, at the joint 4 mm", () => {
    const margin = lastingMargin(net, settings);
    const ring = { xy: Float64Array.of(...lining.outline.xy, lining.outline.xy[0]!, lining.outline.xy[1]!) };
    const arc = arcLengths(ring);
    for (const [s, inside] of [[net.places.toe, 6.5], [net.places.jointMedial, 4], [net.places.breastLateral, 4]] as const) {
      const [x, y] = edgePoint(net.feather, s);
      expect(Math.abs(nearestOn(ring, arc, x, y).distance - (margin(s) - inside))).toBeLessThan(0.1);
    }
  });
});

/** Whole turning of an edge, radians, positive to the left. */
function turned({ line }: Edge): number {
  const { xy } = line;
  let sum = 0;
  for (let i = 2; i + 3 < xy.length; i += 2) {
    const ax = xy[i]! - xy[i - 2]!;
    const ay = xy[i + 1]! - xy[i - 1]!;
    const bx = xy[i + 2]! - xy[i]!;
    const by = xy[i + 3]! - xy[i + 1]!;
    sum += Math.atan2(ax * by - ay * bx, ax * bx + ay * by);
  }
  return sum;
}
