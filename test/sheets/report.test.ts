import { describe, expect, test } from "vitest";
import { finding } from "#base/findings.ts";
import { inFile, measureReport } from "#sheets/measure-report.ts";
import { arrange } from "#sheets/arrange.ts";
import { gridOf, papers } from "#sheets/paper.ts";
import { reportOf } from "#sheets/report.ts";
import { sampleLast, samplePair } from "../support/sample-pair.ts";

describe("report.json", () => {
  const input = samplePair({ findings: [finding("outline-off", { file: "f", piece: "p", offMm: 1 })], timesMs: { flatten: 12 } });
  const report = JSON.parse(JSON.stringify(reportOf(input, arrange(input.pieces, gridOf(papers.A4)))));

  test("has the fields that docs/report.md promises", () => {
    expect(Object.keys(report)).toEqual(["version", "title", "size", "last", "shell", "sheet", "pieces", "pieceSettings", "lasting", "findings", "timesMs"]);
    expect(report.version).toBe(1);
    expect(report.timesMs).toEqual({ flatten: 12 });
    expect(report.findings[0]).toMatchObject({ code: "outline-off", severity: "stop" });
    expect(report.lasting.throatDepthMm).toEqual({ target: 70 });
    expect(report.lasting.sideHeightsMm.lateral.quarters).toHaveLength(3);
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
