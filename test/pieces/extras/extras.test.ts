import { describe, expect, test } from "vitest";
import { explain } from "#base/findings.ts";
import { curveOf } from "#last/surface-curve.ts";
import type { Lines } from "#lines/lines.ts";
import { Sectioner } from "#mesh/section.ts";
import type { Mesh } from "#mesh/mesh.ts";
import { usualParts, type Chosen } from "#pieces/choices.ts";
import { extraPieces } from "#pieces/extras/extras.ts";
import { bowOutline, stripOutline, taperedOutline } from "#pieces/extras/shapes.ts";
import { strapWay } from "#pieces/extras/strap-way.ts";
import { toplineLength, toplinePlace } from "#pieces/extras/topline-way.ts";
import { wholePanel } from "#pieces/net-panels.ts";
import { edgeLength, edgePoint, netUpper } from "#pieces/net-upper.ts";
import { pieceRulesFor, pieceSettingsFrom } from "#pieces/rules.ts";
import type { PieceSettings } from "#pieces/settings.ts";
import { upperPieces } from "#pieces/upper/pieces.ts";
import { selfCrossing } from "#plane/crossing.ts";
import { contains } from "#plane/inside.ts";
import { area, bounds, perimeter, winding } from "#plane/measure.ts";
import { flatPump } from "../../support/flat-pump.ts";
import { gridMesh } from "../../support/formula-surfaces.ts";

const labels = { title: "Practice pair", size: "38" };
const pump = flatPump();
const panels = [wholePanel(netUpper(pump.last, pump.lines, pump.flat))];

function extras(with_: Partial<Chosen>, own: Partial<PieceSettings> = {}) {
  const chosen: Chosen = { ...usualParts, edge: "taped", ...with_ };
  const settings = pieceSettingsFrom(pieceRulesFor(pump.last), own);
  const upper = upperPieces({ panels, settings, chosen, labels }).drafts;
  return { settings, ...extraPieces({ panels, upper, settings, chosen, labels }) };
}
const named = (parts: ReturnType<typeof extras>, name: string) => parts.drafts.find((d) => d.name === name)!;
const marks = (parts: ReturnType<typeof extras>, name: string) => parts.upper.flatMap((d) => d.marks.filter((m) => m.name.startsWith(name)));

describe("shapes", () => {
  test("a strip with a round end has the area and the perimeter of its formula", () => {
    const strip = stripOutline(100, 20, true);
    // A rectangle of 90 by 20 and half a circle of radius 10.
    expect(area(strip)).toBeCloseTo(90 * 20 + (Math.PI * 100) / 2, 0);
    expect(perimeter(strip)).toBeCloseTo(2 * 90 + 20 + 10 * Math.PI, 1);
    expect(Math.sign(winding(strip))).toBe(1);
  });
  test("a tapered strip is a trapezium, a bow is symmetric both ways", () => {
    expect(area(taperedOutline(80, 16, 24))).toBeCloseTo(80 * 20, 9);
    const { xy } = bowOutline(60, 26, 14);
    const points = Array.from({ length: xy.length / 2 }, (_, i) => `${Math.abs(xy[2 * i]!).toFixed(9)} ${Math.abs(xy[2 * i + 1]!).toFixed(9)}`);
    for (const p of new Set(points)) expect(points.filter((q) => q === p).length % 2, p).toBe(0);
    expect(bounds(bowOutline(60, 26, 14))).toEqual({ minX: -30, maxX: 30, minY: -13, maxY: 13 });
  });
});

describe("the way of a strap", () => {
  /** A tube of radius r along an axis that rises by `slope`; its skin is cut by every upright plane. */
  const tube = (r: number, slope: number): Mesh => {
    const size = Math.sqrt(1 + slope * slope);
    return gridMesh((s, t) => {
      const a = 2 * Math.PI * s, x = -150 + 300 * t;
      const across = r * Math.cos(a), up = r * Math.sin(a);
      return [(x - slope * up) / size, across, (slope * x + up) / size];
    }, 720, 40);
  };
  /** Toplines that pass a place 80 mm behind their throat, where they end. */
  const lineThrough = ([x, y, z]: readonly [number, number, number]) => curveOf([x - 5, y, z, x, y, z, x + 80, y, z]);
  const linesFrom = (inner: readonly [number, number, number], outer: readonly [number, number, number]): Lines => ({ toplineMedial: lineThrough(inner), toplineLateral: lineThrough(outer) }) as unknown as Lines;

  test("is half the tube's girth square to its axis, however the axis rises (circumference of a circle)", () => {
    for (const slope of [0, 0.3, 0.6]) {
      const r = 35;
      const lines = linesFrom([0, r, 0], [0, -r, 0]);
      const way = strapWay(lines, new Sectioner(tube(r, slope)), 80)!;
      // The lean is known to a hundredth, which lengthens the way by less than a ten-thousandth.
      expect(way.lengthMm, String(slope)).toBeGreaterThan(Math.PI * r - 0.05);
      expect(way.lengthMm, String(slope)).toBeLessThan(Math.PI * r + 0.05);
    }
  });
  test("is none beyond the topline's end", () => {
    expect(strapWay(linesFrom([0, 35, 0], [0, -35, 0]), new Sectioner(tube(35, 0)), 90)).toBeUndefined();
  });
});

describe("places along the topline", () => {
  test("are counted from the throat on either half and end at the back", () => {
    const topline = panels[0]!.edges[2]!;
    const throat = panels[0]!.places.find((p) => p.name === "throat")!.s;
    expect(toplineLength(panels, "medial") + toplineLength(panels, "lateral")).toBeCloseTo(edgeLength(topline), 9);
    expect(toplinePlace(panels, "medial", 30)).toEqual({ panel: 0, edge: 2, s: throat - 30 });
    expect(toplinePlace(panels, "lateral", 30)).toEqual({ panel: 0, edge: 2, s: throat + 30 });
    expect(toplinePlace(panels, "medial", throat + 1)).toBeUndefined();
  });
});

describe("extras", () => {
  const all = extras({ toeCap: true, backStrip: true, gore: true, bow: true });

  test("are sound outlines, counter-clockwise, and leave the net card alone", () => {
    expect(all.drafts.map((d) => d.name)).toEqual(["toe cap", "back strip", "elastic gore", "bow", "bow stay", "bow knot"]);
    for (const d of all.drafts) {
      expect(selfCrossing(d.outline), d.name).toBeUndefined();
      expect(Math.sign(winding(d.outline)), d.name).toBe(1);
    }
    expect(all.upper.find((d) => d.net)).toEqual(extras({}).upper.find((d) => d.net));
    expect(all.findings.map(explain)).toEqual([]);
  });

  test("the back strip is as long as the back seam, what is turned over it and the lasting margin; 14 to 18 mm wide above and 22 to 26 below (handbook rows, common practice)", () => {
    const { settings } = all;
    const strip = bounds(named(all, "back strip").outline);
    expect(strip.maxX - strip.minX).toBeCloseTo(edgeLength(panels[0]!.edges[1]!) + settings.toplineFoldMm + settings.lastingHeelMm, 9);
    const rules = pieceRulesFor(pump.last);
    expect([rules.backStripTopMm.min, rules.backStripTopMm.max, rules.backStripFeatherMm.min, rules.backStripFeatherMm.max]).toEqual([14, 18, 22, 26]);
    expect(marks(all, "edge of the back strip")).toHaveLength(2);
  });

  test("the toe cap has the vamp's own edge, and ends where it was asked to on the centre line", () => {
    const cap = named(all, "toe cap");
    const cut = all.upper.find((d) => !d.net)!;
    const toe = panels[0]!.centre![1];
    expect(bounds(cap.outline).minX).toBeCloseTo(toe[0] - all.settings.toeCapMm, 6);
    expect(bounds(cap.outline).maxX).toBe(bounds(cut.outline).maxX);
    const { xy } = cap.outline;
    // Every point lies on the vamp or in it, a hair beside the corners aside.
    for (let i = 0; i < xy.length; i += 2) expect(contains(cut.outline, xy[i]! * 0.9999 + 0.0001 * (toe[0] - 20), xy[i + 1]! * 0.9999)).toBe(true);
    const folded = named(extras({ toeCap: true }, { toeCapFoldMm: 4 }), "toe cap");
    expect(bounds(folded.outline).minX).toBeCloseTo(toe[0] - all.settings.toeCapMm - 4, 2);
  });

  test("a cap that would reach the joint is left out and says how long it may be", () => {
    const long = extras({ toeCap: true }, { toeCapMm: 64 });
    expect(long.drafts).toEqual([]);
    expect(long.findings.map(explain)).toEqual([expect.stringMatching(/^The toe cap reaches 64 mm back; on this last it has to end \d+ mm/)]);
  });

  test("the gore's elastic covers its opening by the lap on both sides; one for either side of the shoe", () => {
    const gore = named(all, "elastic gore");
    const { goreWideMm, goreDeepMm, goreLapMm } = all.settings;
    const box = bounds(gore.outline);
    expect([box.maxX - box.minX, box.maxY - box.minY]).toEqual([goreWideMm + 2 * goreLapMm, goreDeepMm + goreLapMm]);
    expect(gore.count).toBe(2);
    const deep = extras({ gore: true }, { goreDeepMm: 30 });
    expect(deep.findings.map(explain)).toEqual(expect.arrayContaining([expect.stringMatching(/to the feather line; 10 mm are needed .* Make it less deep/)]));
    expect(marks(all, "cut out for the gore")).toHaveLength(2);
  });

  test("the bow's band goes round twice its length and laps; its pricks lie in the upper", () => {
    const box = bounds(named(all, "bow").outline);
    expect(box.maxX - box.minX).toBe(2 * all.settings.bowLongMm + 8);
    const cut = all.upper.find((d) => !d.net)!;
    const pricks = cut.marks.flatMap((m) => (m.kind === "prick" && m.name === "bow" ? [m.at] : []));
    expect(pricks).toHaveLength(2);
    for (const [x, y] of pricks) expect(contains(cut.outline, x, y)).toBe(true);
    expect((pricks[0]![1] + pricks[1]![1]) / 2).toBeCloseTo(edgePoint(panels[0]!.edges[2]!, panels[0]!.places.find((p) => p.name === "throat")!.s)[1], 9);
  });

  test("a strap needs a last to be measured on", () => {
    expect(extras({ strap: true }).findings.map(explain)).toEqual(["There is no instep strap: a taped pattern has no instep to measure it over. To go on, measure over the last with a tape from topline to topline and cut a strap of that length."]);
  });
});
