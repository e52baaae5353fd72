import type { Point3 } from "#last/last.ts";
import type { Chosen } from "../choices.ts";
import type { Draft } from "../draft.ts";
import type { NetPanel } from "../panel.ts";
import type { GroundName, Xy } from "../piece.ts";
import type { PieceSettings } from "../settings.ts";

/** What is looked at before anything is cut. */
export interface ToCheck {
  /** The net panels that the upper's pieces were cut from. */
  readonly panels: readonly NetPanel[];
  /** Every piece, as of a right shoe. */
  readonly drafts: readonly Draft[];
  readonly settings: PieceSettings;
  readonly chosen: Chosen;
  /** The net upper in one, where it was opened into several panels: what they are in all. */
  readonly whole?: NetPanel;
  /** Where a place of a flat sheet lies on the last, so that a finding can be shown there. */
  readonly onLast?: (ground: GroundName, at: Xy) => Point3 | undefined;
}

/** Where a finding speaks of, on the last, where that is known. */
export const shownAt = ({ onLast }: ToCheck, ground: GroundName | undefined, at: Xy): Point3 | undefined => (ground ? onLast?.(ground, at) : undefined);
