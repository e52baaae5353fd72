import type { ToolId } from "./tools.ts";

/** One tool that this pair asks for. */
export interface ToolNeed {
  readonly tool: ToolId;
  /** What it is for, in a sentence. */
  readonly use: string;
  /** What may stand in for it; nothing may where a hand or a lung depends on it. */
  readonly standIn?: string;
  /** Without it the pair cannot be made, or it only makes work lighter. */
  readonly must: boolean;
  /** Ids of the steps that use it. */
  readonly steps: readonly string[];
}
