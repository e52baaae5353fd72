import { describe, expect, test } from "vitest";
import { finding } from "#base/findings.ts";
import { inFile, measureReport } from "#sheets/measure-report.ts";
import type { BottomMade } from "#pieces/bottom/made.ts";
import { arrange } from "#sheets/arrange.ts";
import type { LastInput } from "#sheets/input.ts";
import { gridOf, papers } from "#sheets/paper.ts";
import { reportOf } from "#sheets/report.ts";
import { sampleLast, samplePair } from "../support/sample-pair.ts";

describe("report.json", () => {
  const input = samplePair({ findings: [finding("outline-off", { file: "f", piece: "p", offMm: 1 })], timesMs: { flatten: 12 } });
  const report = JSON.parse(JSON.stringify(reportOf(input, arrange(input.pieces, gridOf(papers.A4)))));

  test("has the fields that docs/report.md promises", () => {
    expect(Object.keys(report)).toEqual(["version", "title", "size", "last", "shell", "printed", "sheet", "pieces", "strips", "stitching", "parts", "pieceSettings", "lasting", "making", "findings", "timesMs"]);
    expect(report.version).toBe(1);
    expect(report.timesMs).toEqual({ flatten: 12 });
    expect(report.findings[0]).toMatchObject({ code: "outline-off", severity: "stop" });
    expect(report.lasting.throatDepthMm).toEqual({ target: 70 });
    expect(report.lasting.sideHeightsMm.lateral.quarters).toHaveLength(3);
    expect(Object.keys(report.lasting)).toEqual(["throatDepthMm", "backHeightMm", "sideHeightsMm", "margins", "marks"]);
    expect(report.lasting.margins.map((m: { draft: number }) => m.draft)).toEqual([1, 2, 3, 4, 5, 6, 7, 8, 9, 10]);
    expect(report.lasting.marks.slice(0, 2)).toEqual([{ letter: "A", name: "throat depth", lengthMm: 70 }, { letter: "B", name: "back height", lengthMm: 56 }]);
  });

  // By hand: two edges of the sample's flat square of 100 mm along the medial half, one along the lateral one… each (0,1,3) and (0,1).
  test("measures the flat topline on the flat shell", () => {
    expect(report.shell.toplineFlatMm).toBeCloseTo(300, 6);
    expect(report.shell.triangles).toBe(2);
  });

  // By hand from the sample: 205 mm on the last, 208 over what lies beneath, 200.4 on the card.
  test("tells of each half of the topline, and what lies beneath the upper", () => {
    expect(report.shell.topline.medial).toEqual({ onLastMm: 205, overMm: 208, flatMm: 200.4, shorterMm: 4.6, mostStretch: 0.06 });
    expect(report.shell.beneath).toEqual([{ length: "topline", half: "medial", onLastMm: 205, addsMm: 3 }, { length: "back", onLastMm: 55, addsMm: 1.25 }]);
    expect(report.shell.settings).toMatchObject({ leather: "kid", edge: "taped", toplineShorter: 0.0225 });
  });

  // By hand: a scan in inches that stands 10 mm off in x, and a card that stands off at (15.4, 0, 0) of the last's frame.
  test("tells how the pattern did when it was tried out, points in the file's own unit", () => {
    const place = { unit: "in" as const, unitPerMm: 1 / 25.4, rotation: [1, 0, 0, 0, 1, 0, 0, 0, 1], translationMm: [10, 0, 0] as const };
    const strain = { p50: 0.01, p95: 0.03, max: 0.05, give: 0.04, gather: 0.05 };
    const station = { share: 0.5, toEndMm: 90.00004, differenceMm: -4, offMeanMm: 2 };
    const feather = { onLastMm: 285, withoutNicksMm: 305, withNicksMm: 288, holds: true };
    const at: [number, number, number] = [15.4, 0, 0];
    const tried = {
      check: {
        rows: [{ key: "area", onLastMm: 30000, onCardMm: 30300, leastMm: -600, mostMm: 600, holds: true }, { key: "throat-depth", onLastMm: 70, onCardMm: 70.2, leastMm: -0.5, mostMm: 0.5, holds: true, at }],
        gapes: [{ half: "medial", at, share: 0.4, fromBackMm: 80, standOffMm: 2, why: "waist-hollow", change: { setting: "sideHeightMedialMm", by: 3 } }],
        nicked: { medial: { seatMm: 8, toeMm: 13 }, lateral: { seatMm: 8, toeMm: 13 } },
        onLast: new Float64Array(3), wrapped: new Float64Array(3), standOff: new Float64Array(1), mesh: input.last.mesh, findings: [],
      },
      relief: {
        nicks: [{ half: "lateral", zone: "toe", fromSeatMm: 280, fromToeMm: 5, lengthMm: 20, opensMm: -1.25, takesAway: 0.1, at, onFlat: new Float64Array(4) }],
        feather: { medial: feather, lateral: feather }, strain, strainWithNicks: strain, gain: 0.1, heelGapMm: { withoutNicks: 117, withNicks: 80 }, card: { xy: new Float64Array(6) },
        seams: [{ seam: "back", pieces: 1, seamMm: 55, strain, energy: 4.005, gain: 0, gainPerMm: 0 }], mustNot: [], findings: [],
      },
      halves: { topline: [station], back: [], feather: [], mostDifferent: station, mostDifferentMm: 4, keepSeparate: false, mean: {}, findings: [] },
    } as unknown as NonNullable<LastInput["tried"]>;
    const told = JSON.parse(JSON.stringify(reportOf({ ...input, last: { ...input.last, placement: place }, tried }, arrange(input.pieces, gridOf(papers.A4)))));
    expect(Object.keys(told).slice(3, 6)).toEqual(["last", "shell", "tried"]);
    expect(told.tried).toEqual({
      check: {
        rows: [{ name: "area", onLast: 30000, onCard: 30300, least: -600, most: 600, holds: true }, { name: "throat-depth", onLast: 70, onCard: 70.2, least: -0.5, most: 0.5, holds: true, at: [1, 0, 0] }],
        gapes: [{ half: "medial", at: [1, 0, 0], share: 0.4, fromBackMm: 80, standOffMm: 2, why: "waist-hollow", change: { setting: "sideHeightMedialMm", by: 3 } }],
        nickedMm: { medial: { seatMm: 8, toeMm: 13 }, lateral: { seatMm: 8, toeMm: 13 } },
      },
      nicks: [{ half: "lateral", zone: "toe", fromSeatMm: 280, fromToeMm: 5, lengthMm: 20, opensMm: -1.25, takesAway: 0.1, at: [1, 0, 0] }],
      nicked: { takesAway: 0.1, feather: { medial: feather, lateral: feather }, heelGapMm: { withoutNicks: 117, withNicks: 80 }, strainWithout: strain, strainWith: strain },
      seams: [{ seam: "back", pieces: 1, seamMm: 55, strain, energy: 4.005, gain: 0, gainPerMm: 0 }],
      halves: { keepSeparate: false, mostDifferent: { ...station, toEndMm: 90 }, topline: [{ ...station, toEndMm: 90 }], back: [], feather: [] },
    });
  });

  test("tells what was chosen, what is cut off a roll, which sheet a piece is drawn on, and what else was made, rounded", () => {
    const [first, ...others] = input.pieces;
    const pieces = [{ ...first!, ground: "vamp" as const }, ...others];
    const strip = { name: "topline tape", material: "tape" as const, widthMm: 4, lengthMm: 412.123456, perPair: 2, where: "in the topline's fold" };
    const depth = { volumeMm3: 8123.456789, mostMm: 2.00004, mostFromSeatMm: 150 };
    const made: BottomMade = {
      boards: { firstMm: 2, secondMm: 1.5, secondBehindJointMm: 12, skiveMm: 15 },
      shank: { lengthMm: 102.5, widthMm: 13, thicknessMm: 1, fromSeatMm: 31.00004, behindJointMm: 20, longestMm: 110, bend: [{ alongMm: 0, riseMm: 0.123456 }] },
      filler: { marginMm: 16, areaMm2: 5400, depth: { ...depth, thicknessMm: Float64Array.of(1, 2) } },
    };
    const parts = { ...input.parts, cut: "quarters" as const };
    const told = JSON.parse(JSON.stringify(reportOf({ ...input, pieces, strips: [strip], parts, made }, arrange(pieces, gridOf(papers.A4)))));
    expect(told.version).toBe(1);
    expect(told.pieces[0]).toMatchObject({ name: first!.name, ground: "vamp" });
    expect(told.pieces[1]).not.toHaveProperty("ground");
    expect(told.strips).toEqual([{ ...strip, lengthMm: 412.1235 }]);
    expect(told.parts).toMatchObject({ cut: "quarters", lining: "three", bow: false });
    expect(told.made).toEqual({ boards: made.boards, shank: { ...made.shank, fromSeatMm: 31, bend: [{ alongMm: 0, riseMm: 0.1235 }] }, filler: { marginMm: 16, areaMm2: 5400, depth: { ...depth, volumeMm3: 8123.4568, mostMm: 2 } } });
    expect(report).not.toHaveProperty("made");
  });

  // Shoelace formula on the report's own numbers.
  test("outlines enclose the areas said", () => {
    for (const piece of report.pieces) {
      const p = piece.outlineMm as [number, number][];
      const twice = p.reduce((sum, [x, y], i) => sum + x * p[(i + 1) % p.length]![1] - p[(i + 1) % p.length]![0] * y, 0);
      expect(Math.abs(twice / 2 - piece.areaMm2)).toBeLessThan(0.5);
      expect(twice).toBeGreaterThan(0);
    }
  });
});

describe("measureReport", () => {
  // file = unitPerMm · (rotation · p + translationMm): a quarter turn about z, moved by (1, 2, 3), in inches, by hand.
  test("puts points into the file's own coordinates", () => {
    const placement = { unit: "in" as const, unitPerMm: 1 / 25.4, rotation: [0, -1, 0, 1, 0, 0, 0, 0, 1], translationMm: [1, 2, 3] as const };
    const [x, y, z] = inFile([25.4, 50.8, 0], placement);
    expect(x).toBeCloseTo((-50.8 + 1) / 25.4, 4);
    expect(y).toBeCloseTo((25.4 + 2) / 25.4, 4);
    expect(z).toBeCloseTo(3 / 25.4, 4);
  });

  test("gives lengths in mm and the feather line point by point", () => {
    const last = sampleLast();
    const report = measureReport(last);
    expect(report.stickLength).toBe(last.measures.stickLength);
    expect(report.feather).toHaveLength(last.feather.points.length / 3);
    expect(report.feather[last.feather.toeIndex]).toEqual(report.toePoint);
  });
});
