import { describe, expect, test } from "vitest";
import { unwatched } from "#base/watch.ts";
import { tapeMarks } from "#sheets/marks/tape-marks.ts";
import { strokeStyles } from "#sheets/pen.ts";
import { sheetsOf } from "#sheets/sheets.ts";
import { pdfLines } from "../support/pdf-lines.ts";
import { sampleLast, sampleLines, samplePair } from "../support/sample-pair.ts";

describe("marks on both lasts", () => {
  const last = sampleLast();
  const marks = tapeMarks(last, sampleLines(last));

  test("come in the order in which the tape meets them from the heel", () => {
    // The sample is lowest inside at 0.52 and outside at 0.48 of the way.
    expect(marks.heights.medial.map((m) => m.tick)).toEqual(["1/4", "1/2", "low", "3/4"]);
    expect(marks.heights.lateral.map((m) => m.tick)).toEqual(["1/4", "low", "1/2", "3/4"]);
    for (const half of ["medial", "lateral"] as const) {
      expect(marks.along[half].slice(0, 4).map((m) => m.tick)).toEqual(marks.heights[half].map((m) => m.tick));
      const lengths = marks.along[half].slice(0, 4).map((m) => m.lengthMm);
      expect([...lengths].sort((a, b) => a - b)).toEqual(lengths);
    }
  });

  test("the lowest place stands in both side views, counted in the same words as everywhere", async () => {
    const files = await sheetsOf(samplePair(), unwatched);
    const text = (await pdfLines(files.find((f) => f.name === "marks.pdf")!.bytes))[0]!.text;
    for (const half of ["medial", "lateral"] as const) {
      const low = marks.heights[half].find((m) => m.tick === "low")!;
      // Once in the side view and once on the strip.
      expect(text.filter((t) => t === `low ${(Math.round(low.lengthMm * 2) / 2).toFixed(1)}`)).toHaveLength(2);
    }
    expect(text.join(" ")).toContain("parts of the way from the seat point to below the throat");
    expect(text.join(" ")).not.toMatch(/\d\d %(?!, not)/);
  });
});

describe("title and size", () => {
  test("the size is printed whole on every page, however long the title", async () => {
    const size = "EU 39.5 narrow";
    const files = await sheetsOf(samplePair({ title: "a title that nobody could print in one line of any page ".repeat(4), size }), unwatched);
    for (const name of ["pattern.pdf", "marks.pdf"]) {
      for (const page of await pdfLines(files.find((f) => f.name === name)!.bytes)) expect(page.text.some((t) => t.startsWith(`size ${size}`))).toBe(true);
    }
  });
});

test("every kind of line with dashes has its own", () => {
  const dashes = (["net", "fold", "stitch", "centre"] as const).map((kind) => strokeStyles[kind].dashMm);
  // Told apart by the number of strokes in a period, or by how much of it is ink.
  const told = dashes.map((d) => `${d.length / 2}, ${d.filter((_, i) => i % 2 === 0).reduce((a, b) => a + b, 0) / d.reduce((a, b) => a + b, 0) > 0.5 ? "mostly ink" : "mostly gap"}`);
  expect(new Set(told).size).toBe(dashes.length);
});
