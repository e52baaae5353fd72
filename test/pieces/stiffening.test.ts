// Stiffener, toe puff, side lining and flank tape. Numbers of the trade stand beside the check they come from.
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { unwatched } from "#base/watch.ts";
import { demoMeasurements } from "#last/demo.ts";
import { lastFromMeasures } from "#last/from-measures.ts";
import { completeMeasures } from "#last/measures-by-size.ts";
import { bothOf, type Draft } from "#pieces/draft.ts";
import { bendsOf } from "#pieces/even.ts";
import { ringEdge } from "#pieces/marks.ts";
import { edgePoint } from "#pieces/net-upper.ts";
import { nearestOn } from "#plane/along.ts";
import { rounded, outlineOf } from "#pieces/stiffening/ring.ts";
import { stiffeningPieces } from "#pieces/stiffening/stiffening.ts";
import { selfCrossing } from "#plane/crossing.ts";
import { contains } from "#plane/inside.ts";
import { area, bounds, perimeter, signedArea } from "#plane/measure.ts";
import { mirrorOutline } from "#plane/mirror.ts";
import { anyLast } from "../support/any-last.ts";
import { laidLinings } from "../support/laid-linings.ts";

const demo = laidLinings(lastFromMeasures(demoMeasurements, "example last", unwatched), { triangles: 4000 });
const { stiffening, settings, sizes } = demo;
const { heel } = stiffening.laid!;
const parts = stiffeningPieces(stiffening);
const named = (drafts: readonly Draft[], name: string): Draft | undefined => drafts.find((d) => d.name === name);
const seat = edgePoint(heel.feather, heel.seat), back = edgePoint(heel.topline, heel.back);
const onBack = (mm: number): readonly [number, number] => {
  const size = Math.hypot(back[0] - seat[0], back[1] - seat[1]);
  return [seat[0] + (mm * (back[0] - seat[0])) / size, seat[1] + (mm * (back[1] - seat[1])) / size];
};

/** How far a piece reaches along the back line from the seat, down and up, mm. */
function reach({ outline }: Draft): { readonly down: number; readonly up: number } {
  const far = (way: 1 | -1): number => {
    let mm = 0;
    while (contains(outline, ...onBack(way * (mm + 0.01)))) mm += 0.01;
    return mm;
  };
  return { down: far(-1), up: far(1) };
}

describe("stiffener", () => {
  const stiffener = named(parts.drafts, "stiffener")!;

  // A national standard for ready-made orthopaedic footwear has 44 mm of height for women's 240 (foot 240 mm, about EU 38, which the example is) in low
  // shoes; common practice: 40 to 46 mm at EU 37, upper edge 8 to 10 mm below the topline.
  test("is near 44 mm high at the back of a women's 38, its edge 8 to 10 mm below the topline", () => {
    const { up } = reach(stiffener);
    const backMm = Math.hypot(back[0] - seat[0], back[1] - seat[1]);
    expect(Math.abs(up - 44)).toBeLessThan(2.5);
    expect(backMm - up).toBeCloseTo(sizes.counterBelowMm, 1);
    expect(sizes.counterBelowMm).toBeGreaterThanOrEqual(8);
    expect(sizes.counterBelowMm).toBeLessThanOrEqual(10);
    expect(parts.findings).toEqual([]);
  });

  // 12 to 14 mm under the feather line (common practice, no source).
  test("is lasted 12 to 14 mm under the seat", () => {
    const { down } = reach(stiffener);
    expect(down).toBeCloseTo(settings.counterLastingMm, 1);
    expect(down).toBeGreaterThanOrEqual(12);
    expect(down).toBeLessThanOrEqual(14);
  });

  // To the heel breast and 10 to 15 mm farther, the inner wing 5 to 10 mm longer (common practice, no source).
  test("its inner wing is longer than the outer one and both reach as far as asked", () => {
    expect(sizes.counterInnerMm - sizes.counterOuterMm).toBeGreaterThanOrEqual(5);
    expect(sizes.counterInnerMm - sizes.counterOuterMm).toBeLessThanOrEqual(10);
    const feather = stiffener.marks.find((m) => m.kind === "line" && m.name === "feather line");
    if (feather?.kind !== "line") throw new Error("a feather line");
    const { xy } = feather.line;
    let length = 0;
    for (let i = 2; i < xy.length; i += 2) length += Math.hypot(xy[i]! - xy[i - 2]!, xy[i + 1]! - xy[i - 1]!);
    // On the flat the feather line of a heel spreads or gathers by a few percent.
    expect(length / (sizes.counterInnerMm + sizes.counterOuterMm)).toBeGreaterThan(0.95);
    expect(length / (sizes.counterInnerMm + sizes.counterOuterMm)).toBeLessThan(1.1);
  });

  // Skived over 12 to 18 mm at the top and 8 to 10 mm along the feather line (common practice, no source).
  test("is full between its skive lines alone", () => {
    const full = stiffener.marks.find((m) => m.kind === "line" && m.use === "skive");
    if (full?.kind !== "line") throw new Error("a skive line");
    const zone = { xy: full.line.xy.slice(0, -2) };
    const { up } = reach(stiffener);
    expect([contains(zone, ...onBack(sizes.skiveFeatherMm - 0.1)), contains(zone, ...onBack(sizes.skiveFeatherMm + 0.1))]).toEqual([false, true]);
    expect([contains(zone, ...onBack(up - sizes.skiveMm + 0.1)), contains(zone, ...onBack(up - sizes.skiveMm - 0.1))]).toEqual([false, true]);
    expect([12, 18].map((mm) => Math.sign(sizes.skiveMm - mm))).toEqual([1, -1]);
  });

  test("there is none where its thickness is nothing, and a back too low for one is told", () => {
    expect(named(stiffeningPieces({ ...stiffening, sizes: { ...sizes, counterMm: 0 } }).drafts, "stiffener")).toBeUndefined();
    const low = stiffeningPieces({ ...stiffening, sizes: { ...sizes, counterBelowMm: 45 } });
    expect(named(low.drafts, "stiffener")).toBeUndefined();
    expect(low.findings.map((f) => f.code)).toContain("stiffener-crosses");
    const lower = stiffeningPieces({ ...stiffening, sizes: { ...sizes, counterBelowMm: 20 } });
    expect(lower.findings.map((f) => f.code)).toContain("stiffener-height");
  });
});

describe("toe puff", () => {
  const puff = named(parts.drafts, "toe puff")!;

  // 35 to 45 mm back from the toe (common practice, no source); a welted men's puff ends 2½ in, 64 mm, from the feather line (notes of a hand-welting maker): the bound.
  test("reaches back 35 to 45 mm, straight across, and never as far as a men's welted one", () => {
    const { minX, maxX } = bounds(puff.outline);
    const toe = edgePoint(stiffening.net.feather, stiffening.net.places.toe);
    expect(toe[0] - minX).toBeCloseTo(sizes.puffReachMm, 6);
    expect(toe[0] - minX).toBeGreaterThanOrEqual(35);
    expect(toe[0] - minX).toBeLessThan(64);
    // 10 to 12 mm are lasted under (common practice, no source).
    expect(maxX - toe[0]).toBeCloseTo(settings.puffLastingMm, 1);
  });

  test("keeps 12 mm from the throat whatever is asked, and 10 mm from the joint or says so", () => {
    const { net } = stiffening;
    const long = stiffeningPieces({ ...stiffening, sizes: { ...sizes, puffReachMm: 90 } });
    const { minX } = bounds(named(long.drafts, "toe puff")!.outline);
    expect(minX - edgePoint(net.topline, net.places.throat)[0]).toBeCloseTo(12, 6);
    const told = long.findings.find((f) => f.code === "puff-at-bend");
    const before = (reachMm: number): number => -reachMm - Math.max(edgePoint(net.feather, net.places.jointMedial)[0], edgePoint(net.feather, net.places.jointLateral)[0]);
    expect(told !== undefined).toBe(before(-minX) < 10);
  });

  test("a puff no longer than its skive, or too narrow for it, is told", () => {
    expect(stiffeningPieces({ ...stiffening, sizes: { ...sizes, puffReachMm: 12 } }).findings.map((f) => f.code)).toContain("puff-none");
    expect(stiffeningPieces({ ...stiffening, sizes: { ...sizes, puffReachMm: 22 } }).findings.map((f) => f.code)).toContain("puff-thin");
    expect(named(stiffeningPieces({ ...stiffening, settings: { ...settings, toePuffMm: 0 } }).drafts, "toe puff")).toBeUndefined();
  });

  test("on a toe as sharp as a wedge the part that is lasted would lie double: told with how much to leave", () => {
    const { net } = stiffening;
    // The same upper with its toe drawn in to a point: |y| no more than 0.6 of the way behind the toe.
    const sharp = net.feather.line.xy.map((v, i, xy) => (i % 2 === 0 ? v : Math.sign(v) * Math.min(Math.abs(v), 1 - 0.6 * xy[i - 1]!)));
    const made = stiffeningPieces({ ...stiffening, net: { ...net, feather: { ...net.feather, line: { xy: sharp } } } });
    const told = made.findings.find((f) => f.code === "puff-doubles");
    expect(told).toBeDefined();
    if (told?.code === "puff-doubles") expect(told.data.trimMm).toBeLessThan(settings.puffLastingMm);
  });
});

describe("side lining and tape", () => {
  test("two side linings where they are wished, none else", () => {
    expect(parts.drafts.map((d) => d.name)).toEqual(["stiffener", "toe puff", "inner side lining", "outer side lining"]);
    expect(stiffeningPieces({ ...stiffening, chosen: { edge: "taped", sideLining: false, gore: false } }).drafts.map((d) => d.name)).toEqual(["stiffener", "toe puff"]);
  });

  // A second strip of 4 to 6 mm at the lowest flanks, laid 1 % shorter (makers' practice, little certain).
  test("a flank tape on either side of both shoes, a hundredth shorter than where it lies", () => {
    const [tape] = parts.strips;
    expect(tape!.perPair).toBe(4);
    expect(tape!.widthMm).toBeGreaterThanOrEqual(4);
    expect(tape!.widthMm).toBeLessThanOrEqual(6);
    expect((tape!.lengthMm - 2 * settings.stripEndsMm) / (2 * settings.flankTapeReachMm)).toBeCloseTo(0.99, 9);
    // It lies below a tape in the fold, and not where the topline is cut open for a gore.
    const stripsOf = (edge: (typeof stiffening)["chosen"]["edge"], gore = false, foldMm = settings.toplineFoldMm) =>
      stiffeningPieces({ ...stiffening, settings: { ...settings, toplineFoldMm: foldMm }, chosen: { edge, sideLining: false, gore } }).strips;
    for (const edge of ["raw", "folded", "bound", "wrapped", "bagged"] as const) expect(stripsOf(edge), edge).toEqual([]);
    expect(stripsOf("taped", true)).toEqual([]);
    expect(stripsOf("taped", false, 0)).toEqual([]);
    expect(stripsOf("taped")).toHaveLength(1);
  });

  // Its ends lie on skived ends of stiffener and puff (a workshop of hand shoemakers); pared itself, so that no step is left.
  test("a side lining is pared over both laps and along its upper edge", () => {
    for (const name of ["inner side lining", "outer side lining"]) {
      const { marks, outline } = named(parts.drafts, name)!;
      const skives = marks.filter((m) => m.kind === "line" && m.use === "skive");
      expect(skives, name).toHaveLength(1);
      const [skive] = skives;
      if (skive?.kind !== "line") throw new Error("a line");
      const { xy } = skive.line;
      const ring = ringEdge(outline);
      const away = Array.from({ length: xy.length / 2 }, (_, i) => nearestOn(ring.line, ring.arc, xy[2 * i]!, xy[2 * i + 1]!).distance);
      const least = Math.min(sizes.skiveFeatherMm, settings.sideLiningLapMm), most = Math.max(sizes.skiveFeatherMm, settings.sideLiningLapMm);
      // From the feather line up, along the upper edge, down again: as far inside as it is pared.
      for (const mm of away) {
        expect(mm).toBeGreaterThan(least - 0.2);
        expect(mm).toBeLessThan(most + 0.2);
      }
    }
  });

  test.each([{ counterInnerMm: 0 }, { counterInnerMm: 5 }, { counterInnerMm: 20 }, { counterOuterMm: 0 }, { counterOuterMm: 200 }, { counterRakeMm: 100 }, { sideLiningLapMm: 100 }, { sideLiningLapMm: 0 }])("with %o side linings still lie between seat and toe, or are told", (own) => {
    const out = stiffeningPieces({ ...stiffening, sizes: { ...sizes, ...own }, settings: { ...settings, ...own } });
    const drawn = out.drafts.filter((d) => d.material === "side lining");
    expect(drawn.length + out.findings.filter((f) => f.code === "side-lining-short").length).toBe(2);
    for (const { outline } of drawn) {
      expect(signedArea(outline)).toBeGreaterThan(0);
      expect(outline.xy.every(Number.isFinite)).toBe(true);
    }
  });
});

test("rounded corners are circles: a square of 100 mm rounded by 10 mm has the area and way round of the closed form", () => {
  const side = (a: readonly number[], b: readonly number[]) => ({ xy: Float64Array.of(a[0]!, a[1]!, b[0]!, b[1]!) });
  const square = [side([0, 0], [100, 0]), side([100, 0], [100, 100]), side([100, 100], [0, 100]), side([0, 100], [0, 0])];
  const ring = outlineOf(rounded(square, [10, 10, 10, 10]));
  // 24 chords to a quarter circle take 0.07 % off its area.
  expect(area(ring)).toBeCloseTo(10_000 - (4 - Math.PI) * 100, 0);
  expect(perimeter(ring)).toBeCloseTo(400 - 80 + 20 * Math.PI, 0);
});

test.each([[35, "pointed"], [36, "round"], [37, "almond"], [38, "square"], [44, "broad round"], [46, "narrow square"]] as const)("the stiffener of a %i, %s, runs even: its edge changes its bend six times at most", (sizeEu, toe) => {
  const { measures } = completeMeasures({ sizeEu, toe });
  const made = laidLinings(lastFromMeasures(measures, "any size", unwatched), { triangles: 3000 });
  const { outline } = named(stiffeningPieces(made.stiffening).drafts, "stiffener")!;
  expect(bendsOf(outline)).toBeLessThanOrEqual(6);
});

describe("for any last", () => {
  const any = fc.record({
    ...anyLast,
    rakeMm: fc.integer({ min: 0, max: 25 }),
    roundMm: fc.integer({ min: 4, max: 20 }),
    puffMm: fc.integer({ min: 30, max: 50 }),
  });
  test("stiffener, puff and side linings are whole, simple, of a maker's size and mirrored to the bit", { timeout: 120_000 }, () => {
    fc.assert(
      fc.property(any, ({ rakeMm, roundMm, puffMm, ...of }) => {
        const last = lastFromMeasures(completeMeasures(of).measures, "any last", unwatched);
        const made = laidLinings(last, { triangles: 1200, pieces: { counterRakeMm: rakeMm, counterRoundMm: roundMm, puffRoundMm: roundMm }, shell: { puffReachMm: puffMm } });
        const { drafts } = stiffeningPieces(made.stiffening);
        expect(drafts.map((d) => d.name)).toEqual(["stiffener", "toe puff", "inner side lining", "outer side lining"]);
        for (const draft of drafts) {
          expect(selfCrossing(draft.outline)).toBeUndefined();
          expect(signedArea(draft.outline)).toBeGreaterThan(2000);
          expect(signedArea(draft.outline)).toBeLessThan(14_000);
          const [right, left] = bothOf(draft, "right");
          expect(left.outline).toEqual(mirrorOutline(right.outline));
          for (const m of draft.marks) if (m.kind === "line" && m.use === "skive") for (let i = 0; i < m.line.xy.length; i += 2) expect(contains(draft.outline, m.line.xy[i]!, m.line.xy[i + 1]!)).toBe(true);
        }
      }),
      { seed: 7, numRuns: 12 },
    );
  });
});
