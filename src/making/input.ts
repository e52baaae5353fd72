import type { OverUpper } from "#lasting/over-upper.ts";
import type { Leather } from "#leather/leather.ts";
import type { BottomMade } from "#pieces/bottom/made.ts";
import type { PartChoices } from "#pieces/choices.ts";
import type { Stiff } from "#pieces/cut.ts";
import type { Piece, Strip } from "#pieces/piece.ts";
import type { PieceSettings } from "#pieces/settings.ts";
import type { Stitched } from "#pieces/stitching.ts";
import type { ToplineEdge } from "#shell/settings.ts";
import type { MakingSaid } from "./said.ts";

/** What the list, the cost and the steps are made from: the pieces and all that was decided about them. */
export interface MakingInput {
  readonly from: "last" | "tape";
  /** Both shoes. */
  readonly pieces: readonly Piece[];
  readonly strips: readonly Strip[];
  readonly stitching: readonly Stitched[];
  readonly parts: PartChoices;
  readonly edge: ToplineEdge;
  readonly settings: PieceSettings;
  /** Stiffener, puff and skives beneath the upper. */
  readonly stiff: Stiff;
  /** None where no bottom was traced. */
  readonly made?: BottomMade;
  readonly leathers: { readonly upper: Pick<Leather, "name" | "known">; readonly lining: Pick<Leather, "name" | "known"> };
  /** The pieces are cut from the pattern corrected for the leather. */
  readonly corrected: boolean;
  /** Where throat, back and sides are to end, on the last, mm; of a taped pattern as taped. */
  readonly ends: {
    readonly throatDepthMm: number;
    readonly backHeightMm: number;
    readonly innerHeightMm?: number;
    readonly outerHeightMm?: number;
    /** By how much a tape over the lasted upper reads more; none of a taped pattern. */
    readonly over?: OverUpper;
  };
  readonly said: MakingSaid;
}
