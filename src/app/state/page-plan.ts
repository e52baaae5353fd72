import type { LastPair, Pair } from "#job/pair.ts";
import { arrange, type CommonSheet } from "#sheets/arrange.ts";
import { sheetChoicesFrom } from "#sheets/choices.ts";
import { gridOf, papers } from "#sheets/paper.ts";
import { inkCovers } from "#sheets/pdf/cover.ts";
import { ring } from "#sheets/piece-drawing.ts";
import { profileOf } from "#sheets/shoe-picture.ts";
import { tilingOf, type Tiling } from "#sheets/tiling.ts";

/** How the pieces lie on the common sheet and which pages show them: the same plan that the printed pattern follows. */
export interface PagePlan {
  readonly sheet: CommonSheet;
  readonly tiling: Tiling;
  /** Pages in front of the pattern, that say how to print and join it. */
  readonly covers: number;
}

export function pagePlan(pair: Pick<LastPair, "from" | "pieces" | "job" | "last" | "lines"> | Extract<Pair, { from: "tape" }>): PagePlan {
  const { pieces, job } = pair;
  const sheet = arrange(pieces, gridOf(papers[sheetChoicesFrom(job.sheets).paper]));
  const tiling = tilingOf(sheet, sheet.placed.map((p) => [ring(p.outline)]));
  const covers = inkCovers({ heading: "", title: "", paper: papers[sheetChoicesFrom(job.sheets).paper], sheet, tiling, ...(pair.from === "last" ? { profile: profileOf(pair.last, pair.lines) } : {}) }).length;
  return { sheet, tiling, covers };
}
