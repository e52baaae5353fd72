import type { ToolId } from "./tools.ts";

/** What is said of one tool, whatever the pair. */
export interface ToolWords {
  /** What it is for, in a sentence. */
  readonly use: string;
  /** What may stand in for it on a kitchen table. */
  readonly standIn?: string;
  /** Why nothing may: where a hand, an eye or a lung depends on it, or the pair does not come out. */
  readonly noStandIn?: string;
  /** Without it (or what stands in) the pair cannot be made, or must not be. Else it only makes work lighter. */
  readonly must: boolean;
  /** Whether a beginner buys it before the first pair, or once she knows that she goes on. */
  readonly buy: "first" | "later";
}

/** One tool that this pair asks for. */
export interface ToolNeed extends ToolWords {
  readonly tool: ToolId;
  /** Ids of the steps that use it, in their order. */
  readonly steps: readonly string[];
}
