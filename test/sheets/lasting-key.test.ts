import { describe, expect, test } from "vitest";
import { unwatched } from "#base/watch.ts";
import { defaultJob } from "#job/default-job.ts";
import { Pipeline } from "#job/pipeline.ts";
import { usualSheets, type SheetSet } from "#sheets/choices.ts";
import { draftsOn } from "#sheets/lasting-key.ts";
import { printed } from "#sheets/print-plan.ts";
import { sheetsOf } from "#sheets/sheets.ts";
import { pdfLines } from "../support/pdf-lines.ts";
import { samplePair } from "../support/sample-pair.ts";

// The invented example pair, cut in vamp and quarters: its drafts are spread over three pieces.
const { pieces } = new Pipeline().run({ ...defaultJob(), parts: { cut: "quarters" } }, new Map());

async function coverOf(sets: SheetSet): Promise<string> {
  const files = await sheetsOf(samplePair({ pieces, choices: { ...usualSheets, sets } }), unwatched);
  return (await pdfLines(files.find((f) => f.name === "pattern.pdf")!.bytes))[0]!.text.join(" ");
}

describe("numbers on the lasting margin", () => {
  test("each that stands on a piece is in the key, once and in order", () => {
    const onPieces = new Set(pieces.filter((p) => p.material === "upper leather").flatMap((p) => p.marks).flatMap((m) => (m.kind === "text" && /^(\d|10)\.?$/.test(m.text) ? [parseInt(m.text, 10)] : [])));
    expect(onPieces.size).toBeGreaterThan(5);
    const drafts = draftsOn(pieces);
    expect(drafts.map((d) => d.number)).toEqual([...onPieces].sort((a, b) => a - b));
    // The first pull is taken at the toe, the fourth at the back: a shoemaking textbook's order, the same that the pieces follow.
    expect(drafts.find((d) => d.number === 1)!.name).toContain("toe");
    expect(drafts.find((d) => d.number === 4)!.name).toBe("back");
  });

  test("the first page says what they mean where they are printed, and is silent where they are not", async () => {
    const cutting = await coverOf("cutting");
    expect(cutting).toContain("small numbers on the lasting margin");
    for (const { number, name } of draftsOn(pieces)) expect(cutting).toContain(`${number} ${name}`);
    expect(draftsOn(printed(pieces, { ...usualSheets, sets: "net" }))).toEqual([]);
    expect(await coverOf("net")).not.toContain("lasting margin");
  });
});
