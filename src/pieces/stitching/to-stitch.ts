import type { Chosen } from "../choices.ts";
import type { Draft } from "../draft.ts";
import type { CutPanel } from "../edges/cut-panel.ts";
import type { LiningPanels } from "../lining/three.ts";
import type { PieceSettings } from "../settings.ts";
import { panelWord } from "../words.ts";

/** What the lines of stitches are read from: the upper's panels as they are cut, the pieces of the other groups, and the choices. */
export interface ToStitch {
  readonly upper: readonly CutPanel[];
  /** The upper's pieces with the places of the extras marked on them, and the pieces of the extras. */
  readonly upperDrafts: readonly Draft[];
  readonly extras: readonly Draft[];
  readonly lining: readonly Draft[];
  /** The net panels of a lining in three. */
  readonly liningPanels?: LiningPanels;
  readonly settings: PieceSettings;
  readonly chosen: Chosen;
}

export const upperNames = ({ upper }: Pick<ToStitch, "upper">): readonly string[] => upper.map(({ panel }) => panelWord(panel));
export const liningNames = ({ lining }: Pick<ToStitch, "lining">): readonly string[] => lining.map(({ name }) => name);
