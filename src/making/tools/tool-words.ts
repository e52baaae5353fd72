import type { ToolWords } from "./tool-need.ts";
import { closingTools } from "./tool-words-closing.ts";
import { cuttingTools } from "./tool-words-cutting.ts";
import { lastingTools } from "./tool-words-lasting.ts";
import { protectingTools } from "./tool-words-protecting.ts";
import { usedUpTools } from "./tool-words-used-up.ts";
import type { ToolId } from "./tools.ts";

/** What each tool is for and what may stand in for it. Common practice, no source. */
export const toolWords: Readonly<Record<ToolId, ToolWords>> = { ...cuttingTools, ...closingTools, ...lastingTools, ...protectingTools, ...usedUpTools };
