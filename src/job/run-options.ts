import type { Watch } from "#base/watch.ts";
import type { LineRules } from "#lines/lines.ts";
import type { PieceRules } from "#pieces/settings.ts";
import type { ShellRules } from "#shell/settings.ts";
import type { TracedPicture } from "#tape/taped-shell.ts";
import type { LastPair } from "./pair.ts";

export interface RunOptions {
  readonly watch?: Watch;
  /** A clock in ms, handed in from outside; without one no times are reported. */
  readonly now?: () => number;
  /** How fine the shell is cut; {@link fineTriangles} unless a drag is being followed. */
  readonly triangles?: number;
  /** A line is being dragged: the shell may be cut and laid flat from the one before, which is much quicker and comes out nearly the same. */
  readonly follow?: boolean;
  /** Gives the pieces of the last full run, or none: they are not looked at while a drag is followed, and cost as much as the rest. */
  readonly withoutPieces?: boolean;
  /** The panels of a cut in panels also where the pieces are left out. */
  readonly withPanels?: boolean;
  /** Told the rules as soon as the last is there, so that they are known also where the job is refused later on. */
  readonly onRules?: (rules: Rules) => void;
  /** Told the last itself likewise: where no pair can be made of it, it can still be looked at and put right. */
  readonly onLast?: (read: Pick<LastPair, "last" | "findings">) => void;
  /** Told each picture of a tape as it is traced: where no pattern can be made of them, they can still be looked at. */
  readonly onTraced?: (picture: TracedPicture) => void;
}

/** What the rules of construction say for one last; a taped pattern has its lines already. */
export interface Rules {
  readonly line?: LineRules;
  readonly shell?: ShellRules;
  readonly piece: PieceRules;
}
