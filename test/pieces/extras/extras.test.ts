import { describe, expect, test } from "vitest";
import { explain } from "#base/findings.ts";
import { Sectioner } from "#mesh/section.ts";
import { usualParts, type Chosen } from "#pieces/choices.ts";
import { extraPieces } from "#pieces/extras/extras.ts";
import { bowOutline, stripOutline, taperedOutline } from "#pieces/extras/shapes.ts";
import { strapWay } from "#pieces/extras/strap-way.ts";
import { toplinePlace } from "#pieces/extras/topline-way.ts";
import { wholePanel } from "#pieces/net-panels.ts";
import { edgeLength, edgePoint, netUpper } from "#pieces/net-upper.ts";
import { pieceRulesFor, pieceSettingsFrom } from "#pieces/rules.ts";
import { extraRules, type ExtraSettings } from "#pieces/rules/extras.ts";
import type { PieceSettings } from "#pieces/settings.ts";
import { upperPieces } from "#pieces/upper/pieces.ts";
import { blockOutline, blockSize, boxCorners } from "#pieces/labels.ts";
import { Room } from "#pieces/room.ts";
import type { NetPanel } from "#pieces/panel.ts";
import { arcLengths, nearestOn } from "#plane/along.ts";
import { selfCrossing } from "#plane/crossing.ts";
import { contains } from "#plane/inside.ts";
import { area, bounds, perimeter, winding } from "#plane/measure.ts";
import { flatPump } from "../../support/flat-pump.ts";
import { quartersOf } from "../../support/panels-apart.ts";
import { linesFrom, strapOn, tube } from "../../support/tube-last.ts";

const labels = { title: "Practice pair", size: "38" };
const pump = flatPump();
const whole = wholePanel(netUpper(pump.last, pump.lines, pump.flat));
const panels = [whole];
const { vamp, inner, outer } = quartersOf(whole);
const quarters = [vamp, inner, outer];

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
    expect(toplinePlace(panels, "medial", throat - 1)).toEqual({ panel: 0, edge: 2, s: 1 });
    expect(toplinePlace(panels, "lateral", edgeLength(topline) - throat + 1)).toBeUndefined();
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
    expect(all.findings.map(explain)).toEqual(["There is no flank tape: the topline is cut open for the gore where it would lie. The tape in the fold is cut through with it; sew its ends down beside the gore."]);
    expect(extras({ toeCap: true, backStrip: true, gore: true, bow: true, edge: "raw" }, { toplineFoldMm: 0 }).findings).toEqual([]);
  });

  test("the back strip is as long as the back seam, what is turned over it and the lasting margin; 14 to 18 mm wide above and 22 to 26 below (handbook rows, common practice)", () => {
    const { settings } = all;
    const strip = bounds(named(all, "back strip").outline);
    expect(strip.maxX - strip.minX).toBeCloseTo(edgeLength(panels[0]!.edges[1]!) + settings.toplineFoldMm + settings.lastingHeelMm, 9);
    const rules = pieceRulesFor(pump.last);
    expect([rules.backStripTopMm.min, rules.backStripTopMm.max, rules.backStripFeatherMm.min, rules.backStripFeatherMm.max]).toEqual([14, 18, 22, 26]);
    const drawn = marks(all, "edge of the back strip");
    expect(drawn.map((m) => m.kind).sort()).toEqual(["line", "line", "prick", "prick", "prick", "prick"]);
    // The strip hides its pricks: each lies inside the line of its own bank, toward the seam.
    for (const m of drawn) if (m.kind === "prick") expect(Math.min(...drawn.flatMap((l) => (l.kind === "line" && l.name === m.name ? [nearestOn(l.line, arcLengths(l.line), ...m.at).distance] : [])))).toBeCloseTo(1.5, 2);
  });

  test("the back strip is as much longer as is turned over with the topline: its fold, or the seam of a bagged one; nothing at a raw one", () => {
    const long = (edge: Chosen["edge"], own: Partial<PieceSettings> = {}) => {
      const made = extras({ backStrip: true, edge }, own);
      const box = bounds(named(made, "back strip").outline);
      return [box.maxX - box.minX - edgeLength(panels[0]!.edges[1]!) - made.settings.lastingHeelMm, named(made, "back strip").marks.filter((m) => /topline/.test(m.name)).map((m) => m.kind === "line" && m.use)[0]];
    };
    const bare = { toplineFoldMm: 0 };
    expect([long("taped"), long("bagged", bare), long("raw", bare)].map(([mm, use]) => [Number((mm as number).toFixed(9)), use])).toEqual([[4.5, "fold"], [3, "stitch"], [0, undefined]]);
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

  test("a raw cap's edge is skived as wide as one that lies over, a folded one for its fold; its pricks on the vamp lie under it", () => {
    const far = (own: Partial<PieceSettings>): number => {
      const made = extras({ toeCap: true }, own);
      const cap = named(made, "toe cap");
      const skive = cap.marks.find((m) => m.kind === "line" && m.use === "skive");
      const toe = panels[0]!.centre![1];
      const edge = toe[0] - made.settings.toeCapMm;
      return skive?.kind === "line" ? Math.min(...Array.from({ length: skive.line.xy.length / 2 }, (_, i) => skive.line.xy[2 * i]!)) - edge : NaN;
    };
    expect(far({})).toBeCloseTo(pieceSettingsFrom(pieceRulesFor(pump.last)).skiveRawMm, 3);
    expect(far({ toeCapFoldMm: 4 })).toBeCloseTo(4 + pieceSettingsFrom(pieceRulesFor(pump.last)).skiveFoldMoreMm, 3);
    const pricks = marks(all, "edge of the toe cap").flatMap((m) => (m.kind === "prick" ? [m.at] : []));
    expect(pricks).toHaveLength(3);
    for (const at of pricks) expect(contains(named(all, "toe cap").outline, ...at)).toBe(true);
  });

  test("a cap of nothing is left out, and says how long it has to be", () => {
    const none = extras({ toeCap: true }, { toeCapMm: 0 });
    expect(none.drafts).toEqual([]);
    expect(none.findings.map(explain)).toEqual([expect.stringMatching(/^There is no toe cap: of 0 mm .* make it 20 mm long or more\.$/)]);
  });

  test("a cap that would reach the joint is left out and says how long it may be", () => {
    const long = extras({ toeCap: true }, { toeCapMm: 64 });
    expect(long.drafts).toEqual([]);
    expect(long.findings.map(explain)).toEqual([expect.stringMatching(/^The toe cap reaches 64 mm back; on this last it has to end \d+ mm/)]);
    // The number that is told is one that fits.
    const fits = Number(/has to end (\d+) mm/.exec(explain(long.findings[0]!))![1]);
    expect(extras({ toeCap: true }, { toeCapMm: fits }).drafts).toHaveLength(1);
    expect(extras({ toeCap: true }, { toeCapMm: fits + 1 }).drafts).toEqual([]);
  });

  test("the gore's elastic covers its opening by the lap on both sides; one for either side of the shoe", () => {
    const gore = named(all, "elastic gore");
    const { goreWideMm, goreDeepMm, goreLapMm } = all.settings;
    const box = bounds(gore.outline);
    expect(box.maxY - box.minY).toBe(goreDeepMm + goreLapMm);
    // Square to either edge of the cut, and below its tip.
    const { xy } = gore.outline;
    const off = (x: number, y: number): number => Math.abs((x - goreWideMm / 2) * goreDeepMm - y * (goreWideMm / 2)) / Math.hypot(goreWideMm / 2, goreDeepMm);
    for (let i = 0; i < xy.length; i += 2) expect(off(Math.abs(xy[i]!), xy[i + 1]!)).toBeCloseTo(goreLapMm, 9);
    expect(gore.count).toBe(2);
    // Its name stands clear of the edges drawn on it.
    const room = new Room(gore.outline, gore.marks.flatMap((m) => (m.kind === "line" ? [m.line] : [])));
    for (const { at, lines, angleDeg } of gore.labels) expect(room.meets(boxCorners(at, blockSize(lines)[0] / 2, blockSize(lines)[1] / 2, angleDeg))).toBe(false);
    // It gives along the topline and not down.
    expect(gore.directionDeg).toBe(-90);
    const deep = extras({ gore: true }, { goreDeepMm: 30 });
    expect(deep.findings.map(explain)).toEqual(expect.arrayContaining([expect.stringMatching(/to the feather line; 10 mm are needed .* Make it less deep/)]));
    const cuts = marks(all, "cut out for the gore").filter((m) => m.kind === "line");
    expect(cuts).toHaveLength(2);
    // Through what is turned over it goes on as its mirror image: from cutting line to cutting line.
    const cut = all.upper.find((d) => !d.net)!;
    const ring = { xy: Float64Array.of(...cut.outline.xy, cut.outline.xy[0]!, cut.outline.xy[1]!) };
    for (const m of cuts) {
      const { line } = m as Extract<typeof m, { kind: "line" }>;
      expect(line.xy.length / 2).toBe(5);
      for (const i of [0, line.xy.length - 2]) expect(nearestOn(ring, arcLengths(ring), line.xy[i]!, line.xy[i + 1]!).distance).toBeLessThan(0.06);
    }
    // Where there is no leather any more there is no gore.
    const none = extras({ gore: true }, { goreDeepMm: 100 });
    expect(none.drafts).toEqual([]);
    expect(none.findings.map(explain)).toEqual(["inner", "outer"].map((half) => `There is no elastic gore: on the ${half} side there is no leather any more 100 mm below the topline. To go on, make the gore less deep.`));
  });

  const withStrap = (on: readonly NetPanel[], own: Partial<PieceSettings> = {}) => {
    const settings = pieceSettingsFrom(pieceRulesFor(pump.last), own), chosen: Chosen = { ...usualParts, edge: "taped", strap: true };
    const upper = upperPieces({ panels: on, settings, chosen, labels }).drafts;
    return { settings, ...extraPieces({ panels: on, upper, onLast: strapOn(settings.strapBehindThroatMm), settings, chosen, labels }) };
  };

  test("the strap's fold runs all round its free end, a fold inside the cutting line; its lining's marks end at its own edges", () => {
    const { drafts, settings } = withStrap(panels);
    const [strap, lining] = ["instep strap", "strap lining"].map((n) => drafts.find((d) => d.name === n)!);
    const ring = { xy: Float64Array.of(...strap!.outline.xy, strap!.outline.xy[0]!, strap!.outline.xy[1]!) };
    expect(strap!.marks.flatMap((m) => (m.kind === "prick" ? [m.name] : []))).toEqual(["button", "fold", "fold", "fold", "fold"]);
    const folds = strap!.marks.flatMap((m) => (m.kind === "line" && m.use === "fold" ? [m.line] : []));
    expect(folds).toHaveLength(3);
    for (const { xy } of folds) for (let i = 0; i < xy.length; i += 2) if (xy[i]! > settings.strapFoldMm) expect(nearestOn(ring, arcLengths(ring), xy[i]!, xy[i + 1]!).distance).toBeCloseTo(settings.strapFoldMm, 1);
    expect(Math.max(...folds.map((l) => bounds(l).maxX))).toBeCloseTo(bounds(strap!.outline).maxX - settings.strapFoldMm, 9);
    expect(lining!.marks.filter((m) => m.kind === "line").map((m) => (m.kind === "line" ? bounds(m.line).maxY : 0))).toEqual([bounds(lining!.outline).maxY, bounds(lining!.outline).maxY]);
    // The words stand inside, whatever the width.
    for (const strapWidthMm of [8, 12, 20]) {
      for (const d of withStrap(panels, { strapWidthMm }).drafts) for (const l of d.labels) for (let i = 0, { xy } = blockOutline(l); i < xy.length; i += 2) expect(contains(d.outline, xy[i]!, xy[i + 1]!), `${d.name} ${strapWidthMm}`).toBe(true);
    }
  });

  test("words stand inside every added piece, at both ends of the rules' ranges", () => {
    const rules = pieceRulesFor(pump.last);
    for (const end of ["min", "max"] as const) {
      const own = Object.fromEntries(Object.keys(extraRules).map((key) => [key, rules[key as keyof ExtraSettings][end]]));
      const { drafts } = extras({ backStrip: true, gore: true, bow: true, toeCap: true }, { ...own, toeCapMm: 45 });
      expect(drafts).toHaveLength(6);
      for (const d of [...drafts, ...withStrap(panels, own).drafts]) for (const l of d.labels) for (let i = 0, { xy } = blockOutline(l); i < xy.length; i += 2) expect(contains(d.outline, xy[i]!, xy[i + 1]!), `${d.name}, ${end}`).toBe(true);
    }
  });

  test("a strap on a seam, or nearer than 10 mm to one, is told on either half", () => {
    expect(withStrap(panels).findings).toEqual([]);
    const topline = inner.edges.find((e) => e.role === "topline")!;
    const onVamp = edgeLength(vamp.edges.find((e) => e.role === "topline")!) - vamp.places.find((p) => p.name === "throat")!.s;
    const told = (strapBehindThroatMm: number) => withStrap(quarters, { strapBehindThroatMm }).findings.map(explain);
    expect(told(onVamp)).toEqual(["inner", "outer"].map((half) => expect.stringMatching(new RegExp(`comes to lie on a seam of the ${half} side or less than 10 mm`))));
    expect(told(onVamp + 15)).toHaveLength(2);
    expect(told(onVamp + edgeLength(topline) / 2)).toEqual([]);
  });

  test("all that can be laid on is pricked where it is hidden, and nothing where an edge stays in sight", () => {
    const lapped = extras({ seam: "lapped", gore: true, toeCap: true });
    const pricks = lapped.upper.filter((d) => !d.net).flatMap((d) => d.marks.flatMap((m) => (m.kind === "prick" ? [m.name] : [])));
    expect(pricks).toEqual(expect.arrayContaining(["edge of the toe cap", "cut out for the gore, inside", "cut out for the gore, outside"]));
    const settings = pieceSettingsFrom(pieceRulesFor(pump.last)), chosen: Chosen = { ...usualParts, edge: "taped", seam: "lapped" };
    const cut = extraPieces({ panels: quarters, upper: upperPieces({ panels: quarters, settings, chosen, labels }).drafts, settings, chosen, labels }).upper;
    expect(cut.find((d) => d.name === "vamp")!.marks.filter((m) => m.kind === "prick" && m.name.startsWith("side seam"))).toEqual([]);
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
