import type { Pair } from "#job/pair.ts";
import { arrange, type CommonSheet } from "#sheets/arrange.ts";
import { gridOf, papers } from "#sheets/paper.ts";
import { ring } from "#sheets/piece-drawing.ts";
import { tilingOf, type Tiling } from "#sheets/tiling.ts";

/** How the pieces lie on the common sheet and which pages show them: the same plan that the printed pattern follows. */
export interface PagePlan {
  readonly sheet: CommonSheet;
  readonly tiling: Tiling;
  readonly pages: number;
}

export function pagePlan({ pieces, job }: Pick<Pair, "pieces" | "job">): PagePlan {
  const sheet = arrange(pieces, gridOf(papers[job.paper]));
  const tiling = tilingOf(sheet, sheet.placed.map((p) => [ring(p.outline)]));
  return { sheet, tiling, pages: tiling.tiles.length };
}
