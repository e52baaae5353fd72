import { describe, expect, test } from "vitest";
import { unwatched } from "#base/watch.ts";
import { marksOf } from "#lasting/gauges.ts";
import { gaugesFor } from "#sheets/marks/marks-pdf.ts";
import { strokeStyles } from "#sheets/pen.ts";
import { sheetsOf } from "#sheets/sheets.ts";
import { pdfLines } from "../support/pdf-lines.ts";
import { samplePair } from "../support/sample-pair.ts";

const half = (mm: number): string => (Math.round(mm * 2) / 2).toFixed(1);

describe("marks on both lasts", () => {
  const gauges = gaugesFor(samplePair());

  test("come in the order in which the tape meets them from the heel", () => {
    // The sample is lowest inside at 0.52 and outside at 0.48 of the way.
    const heights = (of: "medial" | "lateral") => marksOf(gauges, of).filter((m) => "CDEF".includes(m.letter));
    expect(heights("medial").map((m) => m.letter).join("")).toBe("CDFE");
    expect(heights("lateral").map((m) => m.letter).join("")).toBe("CFDE");
    for (const of of ["medial", "lateral"] as const) {
      const lengths = marksOf(gauges, of).map((m) => m.alongMm!);
      expect([...lengths].sort((a, b) => a - b)).toEqual(lengths);
    }
  });

  test("the lowest place stands in both side views and on the strips of both lasts", async () => {
    const files = await sheetsOf(samplePair(), unwatched);
    const [first, ...strips] = await pdfLines(files.find((f) => f.name === "marks.pdf")!.bytes);
    for (const of of ["medial", "lateral"] as const) {
      const low = marksOf(gauges, of).find((m) => m.letter === "F")!;
      expect(first!.text.filter((t) => t === `F ${half(low.lengthMm!)}`)).toHaveLength(1);
      for (const { text } of strips) expect(text.filter((t) => t === half(low.alongMm!)).length).toBeGreaterThan(0);
    }
    const words = first!.text.join(" ");
    expect(words).toContain("parts of the way from the seat point to below the throat");
    expect(words).not.toMatch(/\d\d %(?!, not)/);
    expect(words).toContain("All lengths lie on the bare last.");
    expect(words).toContain("nothing here replaces your judgement");
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
