// The lining in three and in one. Numbers of the trade stand beside the check they come from.
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { severityOf } from "#base/findings.ts";
import { unwatched } from "#base/watch.ts";
import { demoMeasurements } from "#last/demo.ts";
import { lastFromMeasures } from "#last/from-measures.ts";
import { completeMeasures } from "#last/measures-by-size.ts";
import { halves } from "#lines/feather.ts";
import { bothOf, type Draft } from "#pieces/draft.ts";
import { Refusal } from "#base/refusal.ts";
import { checkPanels } from "#pieces/lining/check.ts";
import { placeJoints, jointWay } from "#pieces/lining/joints.ts";
import { liningPieces } from "#pieces/lining/lining.ts";
import { flatAt } from "#pieces/lining/on-last.ts";
import { lackingOf, toLowest } from "#pieces/lining/own.ts";
import { liningPanels } from "#pieces/lining/three.ts";
import { edgeLength, edgePoint } from "#pieces/net-upper.ts";
import { selfCrossing } from "#plane/crossing.ts";
import { contains } from "#plane/inside.ts";
import { area, signedArea } from "#plane/measure.ts";
import { mirrorOutline } from "#plane/mirror.ts";
import { anyLast } from "../support/any-last.ts";
import { laidLinings } from "../support/laid-linings.ts";

const demo = laidLinings(lastFromMeasures(demoMeasurements, "example last", unwatched), { triangles: 4000 });
const { lining, settings } = demo;
const net = lining.own!.net;
const { scales, heel } = lining.laid!;
const parts = liningPieces(lining);
const named = (drafts: readonly Draft[], name: string): Draft => drafts.find((d) => d.name === name)!;
const names = ["vamp lining", "inner quarter lining", "outer quarter lining", "heel pocket"];

type Way = readonly [readonly [number, number], readonly [number, number]];

/** Least distance of two straight ways, from point to point: another way than the code's. */
function apart(a: Way, b: Way): number {
  const fine = ([[px, py], [qx, qy]]: Way) => {
    const n = Math.ceil(Math.hypot(qx - px, qy - py) / 0.25);
    return Array.from({ length: n + 1 }, (_, k) => [px + (k / n) * (qx - px), py + (k / n) * (qy - py)] as const);
  };
  const others = fine(b);
  return fine(a).reduce((least, [x, y]) => others.reduce((m, [u, v]) => Math.min(m, Math.hypot(u - x, v - y)), least), Infinity);
}

/** Joints that have a place. */
function placed(...input: Parameters<typeof placeJoints>) {
  const { joints, findings } = placeJoints(...input);
  if (!joints) throw new Error("joints have a place here");
  return { ...joints, findings };
}

/** The net panels, and how long both edges of each joint are. */
function panelsOf(input: typeof lining) {
  const lacking = lackingOf(input.settings, input.upper, input.own!);
  const joints = placed(input.own!.net, input.laid!.scales, input.seams, input.settings);
  const panels = liningPanels({ net: input.own!.net, heel: input.laid!.heel, joints, settings: input.settings, lacking });
  const lengths = new Map<string, number[]>();
  for (const panel of [panels.vamp, panels.quarters.medial, panels.quarters.lateral, panels.pocket])
    for (const e of panel.edges) if (e.seam) lengths.set(e.seam, [...(lengths.get(e.seam) ?? []), edgeLength(e)]);
  return { ...panels, lengths };
}

describe("lining in three", () => {
  test("is a vamp lining, two quarter linings and one heel pocket without a back seam", () => {
    expect(parts.drafts.map((d) => d.name)).toEqual(names);
    expect(parts.strips).toEqual([]);
    expect(parts.findings).toEqual([]);
    expect(parts.drafts.map((d) => d.ground)).toEqual(["lining", "lining", "lining", "heel"]);
    for (const d of parts.drafts) expect(d.marks.some((m) => m.kind === "line" && m.use === "stitch")).toBe(false);
  });

  // The pocket is reversed: its flesh side lies to the foot so that the heel does not slip (common practice, no source); all else grain to the foot.
  test("says which side lies to the foot", () => {
    const words = (name: string): string => named(parts.drafts, name).labels.flatMap((b) => b.lines.map((l) => l.text)).join(" ");
    expect(words("heel pocket")).toMatch(/flesh side to the foot/);
    expect(words("vamp lining")).toMatch(/flesh side up/);
  });

  test("both edges of every joint are equally long, to 0.1 mm", () => {
    const { lengths } = panelsOf(lining);
    expect([...lengths.keys()].sort()).toEqual(["pocket lap, inside", "pocket lap, outside", "vamp lap, inside", "vamp lap, outside"]);
    for (const [a, b] of lengths.values()) expect(Math.abs(a! - b!)).toBeLessThan(0.1);
  });

  // Makers' rule (common practice, no source): lapped 6 to 8 mm.
  test("the front piece of a joint goes under by the lap, the rear one is cut net", () => {
    expect(settings.liningLapMm).toBeGreaterThanOrEqual(6);
    expect(settings.liningLapMm).toBeLessThanOrEqual(8);
    const { vamp, quarters } = panelsOf(lining);
    const [joint] = vamp.edges.filter((e) => e.seam === "vamp lap, inside");
    const [x, y] = edgePoint(joint!, edgeLength(joint!) / 2);
    const [a, b] = [edgePoint(joint!, 0), edgePoint(joint!, edgeLength(joint!))];
    const size = Math.hypot(b[0] - a[0], b[1] - a[1]);
    const out = (mm: number): readonly [number, number] => [x + (mm * (b[1] - a[1])) / size, y - (mm * (b[0] - a[0])) / size];
    const { outline } = named(parts.drafts, "vamp lining");
    expect(contains(outline, ...out(settings.liningLapMm - 0.01))).toBe(true);
    expect(contains(outline, ...out(settings.liningLapMm + 0.01))).toBe(false);
    const quarter = named(parts.drafts, "inner quarter lining").outline;
    expect(quarters.medial.edges.some((e) => e.seam === "vamp lap, inside")).toBe(true);
    expect([contains(quarter, ...out(0.01)), contains(quarter, ...out(-0.01))]).toEqual([true, false]);
  });

  // Wings of 30 to 35 % of the stick length (common practice, no source).
  test("the pocket's front edge runs from 30 % of the stick length at the topline to 35 % at the feather line", () => {
    const stick = demo.last.measures.stickLength;
    expect(settings.liningPocketTopMm / stick).toBeCloseTo(0.3, 2);
    expect(settings.liningPocketWingMm / stick).toBeCloseTo(0.35, 2);
  });

  // 48 to 55 mm high at EU 37 (common practice, no source); the example is a 38 with a back of 55 mm.
  test("the pocket is as high as the back", () => {
    const [low, high] = [edgePoint(heel.feather, heel.seat), edgePoint(heel.topline, heel.back)];
    expect(Math.hypot(high[0] - low[0], high[1] - low[1])).toBeCloseTo(edgeLength(net.backMedial), 0);
  });

  // Reductions at the back, common practice without a source: 2 to 3 mm at the topline. All in all the lining must be shorter by them.
  test("pocket and quarters together are shorter than the upper along the topline by what is asked at the back", () => {
    const { quarters, pocket } = panelsOf(lining);
    const topline = (panel: typeof pocket): number => edgeLength(panel.edges.find((e) => e.role === "topline")!);
    const behind = halves.reduce((sum, half) => sum + topline(quarters[half]), topline(pocket));
    const { vamp } = placed(net, scales, [], settings);
    // Over the upper the same way: from vamp joint to vamp joint round the back, less what upper and lining differ by beyond the lowest place.
    const whole = edgeLength(net.topline) - Math.abs(vamp.medial.top - vamp.lateral.top);
    const asked = Math.max(settings.liningBackInTopMm, toLowest(lining.upper) - toLowest(net));
    expect(whole - behind).toBeCloseTo(2 * (asked - (toLowest(lining.upper) - toLowest(net))), 0);
    expect(asked).toBeGreaterThanOrEqual(2);
    expect(asked).toBeLessThanOrEqual(3);
  });

  // Linings stretch up and down at the quarters, a heel pocket round the heel (makers' notes on linings), so that it least stretches up and down.
  test("the pocket's arrow of least stretch runs up and down, beside its back line", () => {
    const pocket = named(parts.drafts, "heel pocket");
    const arrows = pocket.marks.filter((m) => m.kind === "arrow");
    expect(arrows).toHaveLength(1);
    const [arrow] = arrows, back = pocket.marks.find((m) => m.name === "back line");
    if (arrow?.kind !== "arrow" || back?.kind !== "line") throw new Error("marks");
    const angle = (x: number, y: number): number => (Math.atan2(y, x) * 180) / Math.PI;
    const along = angle(arrow.to[0] - arrow.from[0], arrow.to[1] - arrow.from[1]), up = angle(back.line.xy[2]! - back.line.xy[0]!, back.line.xy[3]! - back.line.xy[1]!);
    expect(Math.abs(Math.sin(((along - up) * Math.PI) / 180))).toBeLessThan(1e-6);
    expect(Math.abs(Math.sin(((pocket.directionDeg - up) * Math.PI) / 180))).toBeLessThan(1e-6);
    expect(Math.hypot(arrow.to[0] - arrow.from[0], arrow.to[1] - arrow.from[1])).toBeGreaterThan(25);
    for (const p of [arrow.from, arrow.to]) expect(contains(pocket.outline, ...p)).toBe(true);
  });

  test.each([{ liningPocketTopMm: 0 }, { liningPocketWingMm: 0 }, { liningBackInTopMm: 100 }, { liningBackInFeatherMm: 100 }, { liningBackInMiddleMm: Number.NaN }])("a pocket of which nothing is left is refused by its number: %o", (own) => {
    const cut = () => liningPieces({ ...lining, settings: { ...settings, ...own } });
    expect(cut).toThrow(Refusal);
    expect(cut).toThrow(/^(Heel pocket along|Lining taken in at the back).* cannot be used\. Give a number of millimetres from/);
    // A lining in one has no pocket.
    if (!Object.values(own).some(Number.isNaN)) expect(liningPieces({ ...lining, settings: { ...settings, ...own }, chosen: { lining: "one", edge: "taped" } }).drafts).toHaveLength(1);
  });

  test("pieces that are longer than the upper over them are told by their place", () => {
    const { vamp, quarters, pocket } = panelsOf(lining);
    expect(checkPanels(lining.upper, net, { vamp, quarters, pocket })).toEqual([]);
    const told = (panels: Parameters<typeof checkPanels>[2], over = net) => checkPanels(lining.upper, over, panels).map((f) => (f.code === "lining-longer" ? f.data : undefined));
    /** A panel drawn larger about its origin. */
    const larger = (panel: typeof vamp, by: number): typeof vamp => ({ ...panel, edges: panel.edges.map((e) => ({ ...e, line: { xy: e.line.xy.map((v) => v * by) }, arc: e.arc.map((s) => s * by) })), places: panel.places.map((p) => ({ ...p, s: p.s * by })) });
    const grown = told({ vamp, quarters: { ...quarters, medial: larger(quarters.medial, 1.1) }, pocket });
    expect(grown.map((d) => d?.where)).toEqual(["topline on the inside, all its pieces together", "feather line on the inside, all its pieces together"].slice(2 - grown.length));
    expect(grown.length).toBeGreaterThan(0);
    const high = told({ vamp, quarters, pocket: larger(pocket, 1.1) });
    expect(high.map((d) => d?.where)).toContain("back, on the heel pocket");
    const wide = { ...net, feather: { ...net.feather, line: { xy: net.feather.line.xy.map((v, i) => (i % 2 === 1 ? v * 1.05 : v)) } } };
    expect(told({ vamp, quarters, pocket }, wide).map((d) => d?.where)).toEqual(expect.arrayContaining(["height at 3/4 on the inside", "height at 3/4 on the outside"]));
  });

  test("in one piece it is what it was, with its seam's tape", () => {
    const one = liningPieces({ ...lining, chosen: { lining: "one", edge: "taped" } });
    expect(one.drafts.map((d) => d.name)).toEqual(["lining"]);
    // Tape 14 or 16 mm wide over closed seams (common practice, no source), as long as the back and its ends.
    expect([14, 15, 16]).toContain(one.strips[0]!.widthMm);
    expect(one.strips[0]!.lengthMm).toBeCloseTo(edgeLength(net.backMedial) + 2 * settings.stripEndsMm, 6);
  });

  test("from a taped pattern it is cut in one and says why", () => {
    const { upper, seams, stiffener, chosen, labels } = lining;
    const made = liningPieces({ upper, seams, settings, stiffener, chosen, labels });
    expect(made.drafts.map((d) => d.name)).toEqual(["lining"]);
    expect(made.findings.map((f) => f.code)).toEqual(["lining-in-one"]);
  });
});

describe("joints of the lining", () => {
  // Makers' notes on linings: no joint under a seam of the upper, ≥ 10 mm off (common practice), and never at the ball.
  test.each(["quarters", "inner"] as const)("keep 10 mm from the seams of an upper cut with seams: %s", (cut) => {
    const seams = demo.seams[cut]();
    const { vamp, pocket, findings } = placed(net, scales, seams, settings);
    expect(findings).toEqual([]);
    for (const { half, toplineMm, featherMm } of seams) {
      const seam = jointWay(net, { foot: flatAt(scales[half].feather, featherMm), top: flatAt(scales[half].topline, toplineMm) });
      for (const joint of [vamp[half], pocket[half]]) expect(apart(jointWay(net, joint), seam)).toBeGreaterThan(9.95);
    }
  });

  test("and from the ball, on either half", () => {
    const { vamp } = placed(net, scales, [], settings);
    const ball = [edgePoint(net.feather, net.places.jointMedial), edgePoint(net.feather, net.places.jointLateral)] as const;
    for (const half of halves) expect(apart(jointWay(net, vamp[half]), ball)).toBeGreaterThan(9.95);
  });

  test("a place under a seam is moved beside it; where no place is clear that is told, with how near it comes", () => {
    const seams = demo.seams.quarters();
    const onSeam = { ...settings, liningJointMm: 45 };
    expect(placeJoints(net, scales, seams, onSeam).findings).toEqual([]);
    const tight = placeJoints(net, scales, seams, { ...settings, liningClearMm: 60 });
    const told = tight.findings.filter((f) => f.code === "lining-joint-near");
    expect(told.length).toBeGreaterThan(0);
    for (const { data } of told) expect(data.awayMm).toBeLessThan(60);
  });

  test("a pocket so long that no quarter lining is left: cut in one and told, nothing crosses itself", () => {
    const made = liningPieces({ ...lining, settings: { ...settings, liningPocketWingMm: 98, liningPocketTopMm: 98, liningJointBehindBallMm: 95, liningJointMm: 95 } });
    expect(made.findings.map((f) => f.code)).toContain("lining-quarter-short");
    for (const { outline } of made.drafts) expect(selfCrossing(outline)).toBeUndefined();
    const none = liningPieces({ ...lining, settings: { ...settings, liningPocketWingMm: 98, liningJointBehindBallMm: 100 } });
    expect(none.drafts.map((d) => d.name)).toEqual(["lining"]);
    expect(none.findings.map((f) => f.code)).toContain("lining-quarter-short");
  });

  test("a pocket that comes under the inner waist's seam is told, and so is one shorter than the stiffener", () => {
    const seam = demo.seams.inner()[0]!;
    const near = { ...seam, featherMm: settings.liningPocketWingMm + 4, toplineMm: settings.liningPocketTopMm + 4 };
    const [told] = placeJoints(net, scales, [near], settings).findings;
    expect(told?.code).toBe("pocket-near-seam");
    const short = liningPieces({ ...lining, settings: { ...settings, liningPocketWingMm: 70 } });
    expect(short.findings.filter((f) => f.code === "pocket-short").length).toBeGreaterThan(0);
  });
});

describe("for any last and any rule of the lining", () => {
  const any = fc.record({
    ...anyLast,
    lapMm: fc.integer({ min: 6, max: 8 }),
    jointMm: fc.integer({ min: 15, max: 70 }),
    behindBallMm: fc.integer({ min: 12, max: 60 }),
    inMm: fc.integer({ min: 0, max: 6 }),
  });
  test("no outline crosses itself, none is lost or out of proportion, both sides are mirrored to the bit, joints are equally long", { timeout: 120_000 }, () => {
    fc.assert(
      fc.property(any, ({ lapMm, jointMm, behindBallMm, inMm, ...of }) => {
        const last = lastFromMeasures(completeMeasures(of).measures, "any last", unwatched);
        const made = laidLinings(last, { triangles: 1200, pieces: { liningLapMm: lapMm, liningJointMm: jointMm, liningJointBehindBallMm: behindBallMm, liningBackInTopMm: inMm, liningBackInMiddleMm: inMm, liningBackInFeatherMm: inMm } });
        const { drafts, findings } = liningPieces(made.lining);
        expect(findings.every((f) => severityOf(f) !== "stop")).toBe(true);
        expect(drafts.map((d) => d.name)).toEqual(names);
        for (const [a, b] of panelsOf(made.lining).lengths.values()) expect(Math.abs(a! - b!)).toBeLessThan(0.1);
        const whole = area(liningPieces({ ...made.lining, chosen: { lining: "one", edge: "taped" } }).drafts[0]!.outline);
        let sum = 0;
        for (const draft of drafts) {
          expect(selfCrossing(draft.outline)).toBeUndefined();
          expect(signedArea(draft.outline)).toBeGreaterThan(1000);
          sum += area(draft.outline);
          const [right, left] = bothOf(draft, "right");
          expect(left.outline).toEqual(mirrorOutline(right.outline));
        }
        // Four laps of 6 to 8 mm over heights of some 70 mm more, the back seam less.
        expect(sum / whole).toBeGreaterThan(0.98);
        expect(sum / whole).toBeLessThan(1.12);
      }),
      { seed: 5, numRuns: 12 },
    );
  });
});
