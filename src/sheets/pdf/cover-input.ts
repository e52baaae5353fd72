import type { Strip } from "#pieces/piece.ts";
import type { CommonSheet } from "../arrange.ts";
import type { PrintPaper } from "../print-paper.ts";
import type { Profile } from "../shoe-picture.ts";
import type { Tiling } from "../tiling.ts";

/** What the pages before the pattern tell of. */
export interface Cover {
  readonly heading: string;
  readonly title: string;
  readonly size?: string;
  readonly paper: PrintPaper;
  readonly sheet: CommonSheet;
  readonly tiling: Tiling;
  readonly strips: readonly Strip[];
  /** What the cutting patterns were corrected for, in words. */
  readonly corrected?: string;
  /** Without one no little pictures of the shoe are drawn. */
  readonly profile?: Profile | undefined;
}
