import { finding, type Finding } from "#base/findings.ts";
import type { Last } from "#last/last.ts";
import type { Lines } from "#lines/lines.ts";
import { isFolded, type Chosen } from "../choices.ts";
import type { Draft } from "../draft.ts";
import type { Drawn } from "../edges/edge-lines.ts";
import type { Labels } from "../label-text.ts";
import type { NetPanel } from "../panel.ts";
import type { Strip } from "../piece.ts";
import type { PieceSettings } from "../settings.ts";

export interface ExtraInput {
  readonly panels: readonly NetPanel[];
  /** The upper's drafts, cut and net, as they were drawn from the panels. */
  readonly upper: readonly Draft[];
  /** The last and its lines; a taped pattern has none. */
  readonly onLast?: { readonly last: Last; readonly lines: Lines };
  readonly settings: PieceSettings;
  readonly chosen: Chosen;
  readonly labels: Labels;
}

/** Marks to be drawn on a piece of the upper, by its panel. */
export interface PlaceMark {
  readonly panel: number;
  readonly mark: Drawn;
}

/** What one extra adds. */
export interface Extra {
  readonly drafts: readonly Draft[];
  readonly strips?: readonly Strip[];
  readonly marks?: readonly PlaceMark[];
  readonly findings?: readonly Finding[];
}

/** What is turned over at the topline, or sewn and turned in: so far outside it lies the cutting line. */
export const toplineOutMm = ({ toplineFoldMm, toplineBagMm }: PieceSettings, { edge }: Pick<Chosen, "edge">): number => (edge === "bagged" ? toplineBagMm : isFolded(edge) ? toplineFoldMm : 0);

export const leftOut = (...findings: readonly Finding[]): Extra => ({ drafts: [], findings });

/** The feature asks for what this pair has not; said with what to do instead. */
export const cannot = (what: string, why: string, instead: string): Finding => finding("extra-left-out", { what, why, instead });
