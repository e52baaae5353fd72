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
  /** Laid flat without any leather in mind: as fine as it is to be verified, and coarse (about 1,000 triangles) for many quick trials. */
  readonly fine: FlatShell;
  readonly coarse: FlatShell;
}

/** A flat upper in one piece and its making, on one fineness. */
export interface Trial extends Making {
  readonly flat: FlatShell;
  /** The pattern to be cut, x0 y0 … mm, one pair a vertex of the shell. */
  readonly uv: Float64Array;
}

/** How an upper comes to lie: the pull-over, or in tests something that answers as simply as can be. */
export type Puller = (trial: Trial, on: Pick<LastingCase, "last" | "lines" | "margins">, watch: Watch) => Lasted;
/** The pattern that level 1 proposes, x0 y0 … mm. */
export type Proposer = (trial: Omit<Trial, "uv">, on: Pick<LastingCase, "last">) => Float64Array;

/** What the loop asks of the mechanics. */
export interface Mechanics {
  readonly pull: Puller;
  readonly propose: Proposer;
}

/** The making of a case alone. */
export const makingOf = ({ upper, lining, edge, settings }: Making): Making => ({ upper, ...(lining && { lining }), edge, settings });
