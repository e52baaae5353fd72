import { describe, expect, test } from "vitest";
import { cutInsole } from "#pieces/bottom/boards.ts";
import { netBottom } from "#pieces/bottom/net-bottom.ts";
import { cutOutsole, outsoleMargin } from "#pieces/bottom/outsole.ts";
import { cutSock } from "#pieces/bottom/sock.ts";
import type { Draft } from "#pieces/draft.ts";
import { cutLining } from "#pieces/lining/one.ts";
import { edgePoint, netUpper } from "#pieces/net-upper.ts";
import { acrossAt, ringEdge } from "#pieces/marks.ts";
import { pieceRulesFor, pieceSettingsFrom } from "#pieces/rules.ts";
import { nearestOn } from "#plane/along.ts";
import { area, perimeter } from "#plane/measure.ts";
import { offsetOutline } from "../support/grid-offset.ts";
import type { Outline } from "#plane/outline.ts";
import { flatPump } from "../support/flat-pump.ts";
import { cutUpper } from "../support/whole-cut.ts";

const labels = { title: "Practice pair", size: "38" };
const pump = flatPump("right");
const net = netBottom(pump.last, pump.bottom);
const settings = pieceSettingsFrom(pieceRulesFor(pump.last), {
  upperThicknessMm: 1.1, liningThicknessMm: 0.8, toePuffMm: 0.9, insoleInMm: 0.3, sockInMm: 0.7,
  soleFinishForepartMm: 2, soleFinishWaistMm: 0.5, soleFinishHeelMm: 1.2,
});

const awayFrom = (outline: Outline, x: number, y: number): number => {
  const ring = ringEdge(outline);
  return nearestOn(ring.line, ring.arc, x, y).distance;
};

describe("bottom pieces", () => {
  test("the net bottom keeps to the flat bottom and finds the joint and the breast", () => {
    const { uv, bottom } = pump.bottom;
    for (const v of bottom.loop) expect(awayFrom(net.outline, uv[2 * v]!, uv[2 * v + 1]!)).toBeLessThan(0.05);
    // Nearest point of the loop to the last's joint point, by trying all; the fixture's surface is the flat moved by its length.
    const nearest = (p: readonly [number, number, number]): number =>
      Math.min(...Array.from(bottom.loop, (v) => Math.hypot(uv[2 * v]! - 253 - p[0], uv[2 * v + 1]! - p[1])));
    for (const [place, p] of [[net.jointMedialPoint, pump.last.landmarks.jointMedial], [net.jointLateralPoint, pump.last.landmarks.jointLateral]] as const) {
      expect(Math.abs(Math.hypot(place[0] - 253 - p[0], place[1] - p[1]) - nearest(p))).toBeLessThan(0.1);
      expect(Math.sign(place[1])).toBe(Math.sign(p[1]));
    }
    // A quarter of the last's length (trade glossaries).
    expect(net.breastX).toBe(253 / 4);
    expect(edgePoint(net.ring, net.breastMedial)[0]).toBeCloseTo(net.breastX, 1);
    expect(edgePoint(net.ring, net.breastMedial)[1]).toBeGreaterThan(0);
    expect(edgePoint(net.ring, net.breastLateral)[1]).toBeLessThan(0);
  });

  test("insole and sock: a uniform offset inward, checked by the other way of offsetting", () => {
    for (const [piece, inside] of [[cutInsole(net, settings, labels), 0.3], [cutSock(net, settings, labels)[0]!, 1]] as const) {
      const other = offsetOutline(net.outline, -inside)[0]!;
      expect(Math.abs(area(piece.outline) - area(other))).toBeLessThan(1);
      // Steiner for any smooth closed curve: P − 2πd and A − P d + π d².
      expect(perimeter(piece.outline)).toBeCloseTo(perimeter(net.outline) - 2 * Math.PI * inside, 1);
      expect(Math.abs(area(piece.outline) - (area(net.outline) - inside * perimeter(net.outline) + Math.PI * inside * inside))).toBeLessThan(0.5);
    }
  });

  test("outsole: upper, lining and finish by zone, and the puff at the toe", () => {
    const sole = cutOutsole(net, settings, labels);
    const margin = outsoleMargin(net, settings);
    const at = (s: number): number => {
      const [x, y] = edgePoint(net.ring, s);
      return awayFrom(sole.outline, x, y);
    };
    const zones = [
      [net.toe, 1.9 + 2 + 0.9], [net.toe + 40, 3.9], [net.toe - 40, 3.9], [net.jointMedial, 3.9], [net.jointLateral, 3.9],
      [net.waistMedial, 2.4], [net.waistLateral, 2.4], [net.breastMedial, 3.1], [net.breastLateral, 3.1],
    ] as const;
    for (const [s, mm] of zones) {
      expect(margin(s)).toBeCloseTo(mm, 9);
      expect(Math.abs(at(s) - mm)).toBeLessThan(0.05);
    }
    expect(Math.abs(awayFrom(sole.outline, 0, 0) - 3.1)).toBeLessThan(0.05);
  });

  test("left and right soles differ: the inner waist is hollower than the outer", () => {
    const sole = cutOutsole(net, settings, labels);
    const [outer, inner] = acrossAt(sole.outline, 110)!;
    expect(-outer[1] - inner[1]).toBeGreaterThan(3);
  });

  test("upper and lining say which side is seen: a lining's grain lies against the foot (common practice, no source)", () => {
    const upper = netUpper(pump.last, pump.lines, pump.flat);
    const words = (draft: Draft) => draft.labels.flatMap((b) => b.lines.map((l) => l.text));
    expect(words(cutUpper(upper, settings, labels))).toContain("grain side up");
    expect(words(cutLining(upper, settings, labels))).toContain("flesh side up");
  });

  test("the outsole's note says which side is seen", () => {
    const words = cutOutsole(net, settings, labels).labels.flatMap((b) => b.lines.map((l) => l.text));
    expect(words).toContain("grain side down");
    expect(words).toContain("seen from above,");
  });
});
