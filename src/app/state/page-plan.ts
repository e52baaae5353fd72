import type { LastPair, Pair } from "#job/pair.ts";
import type { CommonSheet } from "#sheets/arrange.ts";
import { sheetChoicesFrom } from "#sheets/choices.ts";
import { inkCovers } from "#sheets/pdf/cover.ts";
import { ring } from "#sheets/piece-drawing.ts";
import { printPlan } from "#sheets/print-plan.ts";
import { profileOf } from "#sheets/shoe-picture.ts";
import { tilingOf, type Tiling } from "#sheets/tiling.ts";

/** How the pieces lie on the common sheet and which pages show them: the same plan that the printed pattern follows. */
export interface PagePlan {
  readonly sheet: CommonSheet;
  readonly tiling: Tiling;
  /** Pages in front of the pattern, that say how to print and join it and list the pieces. */
  readonly covers: number;
}

export function pagePlan(pair: Pick<LastPair, "from" | "pieces" | "strips" | "job" | "labels" | "last" | "lines"> | Extract<Pair, { from: "tape" }>): PagePlan {
  const { pieces, strips, job, labels } = pair;
  const { paper, sheet } = printPlan(pieces, sheetChoicesFrom(job.sheets));
  const tiling = tilingOf(sheet, sheet.placed.map((p) => [ring(p.outline)]));
  const profile = pair.from === "last" ? profileOf(pair.last, pair.lines) : undefined;
  const covers = inkCovers({ heading: labels.title, ...labels, paper, sheet, tiling, strips, profile }).length;
  return { sheet, tiling, covers };
}
