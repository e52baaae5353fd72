// A sound piece is never called wrong: its area against its net panel and its allowances, over lasts, cuts, edges, seams and tops.
import { describe, expect, test } from "vitest";
import type { FindingCode } from "#base/findings.ts";
import { Refusal } from "#base/refusal.ts";
import { defaultJob } from "#job/default-job.ts";
import type { Files } from "#job/files.ts";
import type { Job } from "#job/job.ts";
import { Pipeline } from "#job/pipeline.ts";
import { completeMeasures } from "#last/measures-by-size.ts";
import type { PartChoices } from "#pieces/choices.ts";
import type { ToplineEdge } from "#shell/settings.ts";
import { askedFor, lastNames, truthOf } from "../support/truth-last.ts";
import { hasShared } from "../support/shared.ts";

const wrong: readonly FindingCode[] = ["piece-area-off", "allowance-off", "panels-area-off", "piece-crosses-itself", "piece-narrow", "seam-edges-differ", "seam-notches-apart", "seam-notch-alone"];

const edges: readonly ToplineEdge[] = ["taped", "raw", "bagged"];
const tops = ["mitre", "notch", "dog-tail"] as const;
const seams = ["closed", "lapped", "butted"] as const;

/** Every edge with every top of the back; with every seam where there is one besides, its tops in turn. */
const tried: readonly { readonly edge: ToplineEdge; readonly parts: Partial<PartChoices> }[] = edges.flatMap((edge) => [
  ...tops.map((backTop) => ({ edge, parts: { cut: "back-seam" as const, backTop } })),
  ...seams.flatMap((seam) => [
    { edge, parts: { cut: "inner-seam" as const, seam } },
    ...(edge === "raw" || seam === "butted" ? tops : (["dog-tail"] as const)).map((backTop) => ({ edge, parts: { cut: "quarters" as const, seam, backTop } })),
  ]),
  { edge, parts: { cut: "quarters" as const, backSeam: "butted" as const } },
]);

/** What is found wrong on a last, by what was tried. */
function foundOn(last: Job["last"]): readonly string[] {
  const pipeline = new Pipeline();
  return tried.flatMap(({ edge, parts }) => {
    try {
      const { findings } = pipeline.run({ ...defaultJob(), last, shell: { edge }, parts }, {} as Files, { triangles: 700 });
      return findings.filter(({ code }) => wrong.includes(code)).map((f) => JSON.stringify({ edge, ...parts, ...f, at: undefined }));
    } catch (error) {
      // A seam for which there is no room.
      if (error instanceof Refusal) return [];
      throw error;
    }
  });
}

describe("pieces with any edge, seam and top are as large as their net and their allowances", () => {
  test.each([{ sizeEu: 38, toe: "almond" }, { sizeEu: 35, toe: "pointed", heelHeightMm: 20 }] as const)("made from measures: %o", (said) => {
    expect(foundOn({ from: "measures", measures: completeMeasures(said).measures })).toEqual([]);
  });

  // Lasts made for this project with their truth beside them; without them there is nothing more to try.
  test.skipIf(!hasShared).each(lastNames.slice(-1))("as measured from %s", (name) => {
    const measures = askedFor(truthOf(name).values, { side: "right", toe: "round" });
    expect(foundOn({ from: "measures", measures })).toEqual([]);
  });
});
