import type { Watch } from "#base/watch.ts";
import type { Leather } from "#leather/leather.ts";
import type { Last } from "#last/last.ts";
import type { Lines } from "#lines/lines.ts";
import type { LastingSettings } from "#pieces/rules/lasting.ts";
import type { ToplineEdge } from "#shell/settings.ts";
import type { FlatShell } from "#shell/shell.ts";
import type { Lasted } from "./lasted.ts";
import type { LastingChoices } from "./settings.ts";

/** What an upper is made from and how it is pulled: all that decides where it ends, but for its pattern. */
export interface Making {
  readonly upper: Leather;
  /** Left out for an unlined upper. */
  readonly lining?: Leather;
  readonly edge: ToplineEdge;
  readonly settings: LastingChoices;
}

/** One upper to be lasted. */
export interface LastingCase extends Making {
  readonly last: Last;
  readonly lines: Lines;
  readonly margins: LastingSettings;
  /** Laid flat without any leather in mind: as fine as it is to be verified, and coarse (about 850 triangles) for many quick trials. */
  readonly fine: FlatShell;
  readonly coarse: FlatShell;
}

/** Where and how an upper is lasted, whatever it is made from. */
export type LastingPlace = Pick<LastingCase, "last" | "lines" | "margins">;

/** Pulls a sheet over: its pattern x0 y0 … mm, one pair a vertex of the shell. */
export type Pull = (making: Making, uv: Float64Array, watch: Watch) => Lasted;

/** What the loop asks of the mechanics; in tests something that answers as simply as can be. */
export interface Mechanics {
  /** Makes ready to pull one sheet over as often as is asked; `rough` for trials of which only the differences count. */
  readonly puller: (flat: FlatShell, on: LastingPlace, rough?: boolean) => Pull;
  /** The pattern that level 1 proposes, x0 y0 … mm. */
  readonly propose: (flat: FlatShell, making: Making, on: LastingPlace) => Float64Array;
}

/** The making of a case alone. */
export const makingOf = ({ upper, lining, edge, settings }: Making): Making => ({ upper, ...(lining && { lining }), edge, settings });
