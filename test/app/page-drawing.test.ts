import { beforeAll, describe, expect, test } from "vitest";
import { unwatched } from "#base/watch.ts";
import { defaultJob } from "#job/default-job.ts";
import { Pipeline } from "#job/pipeline.ts";
import { sheetsFor } from "#job/sheets-for.ts";
import { pdfPages, type FoundPage } from "#sheets/readback/pdf-paths.ts";
import type { SheetChoices } from "#sheets/choices.ts";
import { pageDrawing, type PrintedPage } from "#app/state/page-drawing.ts";
import { turned } from "#app/state/page-turns.ts";
import { printedPages } from "#app/printed-pages.ts";

const made = async (sheets: Partial<SheetChoices>): Promise<Uint8Array> => {
  const pair = new Pipeline().run({ ...defaultJob(), sheets }, new Map());
  return (await sheetsFor(pair, unwatched)).find((f) => f.name === "pattern.pdf")!.bytes;
};

describe("the pages as they are printed", () => {
  let pages: readonly PrintedPage[];
  let found: readonly FoundPage[];
  beforeAll(async () => {
    const bytes = await made({});
    pages = await printedPages(bytes);
    found = await pdfPages(bytes);
  });

  test("are those of the file: as many, of ISO 216 A4, with every line that is read back from it", () => {
    expect(pages.length).toBe(found.length);
    for (const [i, page] of pages.entries()) {
      expect(page.widthMm).toBeCloseTo(210, 3);
      expect(page.heightMm).toBeCloseTo(297, 3);
      const lines = pageDrawing(page).marks.filter((m) => m.kind === "line");
      const parts = lines.flatMap((m) => m.d.split("M").slice(1));
      expect(parts.length, `page ${i + 1}`).toBe(found[i]!.paths.length);
      const [x, y] = parts[0]!.split(/[LCZ ]/).map(Number);
      expect(x).toBeCloseTo(found[i]!.paths[0]!.xy[0]!, 2);
      expect(y).toBeCloseTo(found[i]!.paths[0]!.xy[1]!, 2);
    }
  });

  test("carry their words as letters", () => {
    const words = pageDrawing(pages[0]!).marks.flatMap((m) => (m.kind === "words" ? [m.text] : []));
    expect(words.join(" ")).toContain(`Page 1 of ${pages.length}`);
    expect(words.join(" ")).toContain("Example pair");
  });

  test("hide what lies outside their window", () => {
    const { marks, clips } = pageDrawing(pages.at(-1)!);
    expect(clips.length).toBeGreaterThan(0);
    expect(marks.some((m) => m.clip !== undefined)).toBe(true);
    expect(marks.some((m) => m.clip === undefined)).toBe(true);
  });

  test("a bar that came out short is drawn longer, so that it comes out right", async () => {
    const longest = (page: PrintedPage): number => Math.max(...pageDrawing(page).marks.flatMap((m) => (m.kind === "line" && m.clip === undefined ? [wide(m.d)] : [])));
    const wide = (d: string): number => {
      const xs = [...d.matchAll(/[ML](-?[\d.]+) /g)].map((hit) => Number(hit[1]));
      const reach = Math.max(...xs) - Math.min(...xs);
      // The bar across alone is about as long as that.
      return reach > 90 && reach < 110 ? reach : 0;
    };
    const put = (await printedPages(await made({ barAcrossMm: 98 }))).at(-1)!;
    expect(longest(pages.at(-1)!)).toBeCloseTo(100, 2);
    expect(longest(put)).toBeCloseTo(100 * (100 / 98), 2);
  });
});

test("keys turn pages, never beyond the first or the last", () => {
  expect(turned("ArrowRight", 0, 3)).toBe(1);
  expect(turned("ArrowLeft", 0, 3)).toBe(0);
  expect(turned("PageDown", 2, 3)).toBe(2);
  expect(turned("End", 0, 3)).toBe(2);
  expect(turned("Home", 2, 3)).toBe(0);
  expect(turned("a", 1, 3)).toBeUndefined();
});
