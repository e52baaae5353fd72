import type { Finding } from "#base/findings.ts";
import type { Draft } from "./draft.ts";
import type { Strip } from "./piece.ts";

/** What one group of parts adds to a pair: pieces to be drawn for both shoes, lengths to be cut off a roll, and what to look at. */
export interface Parts {
  readonly drafts: readonly Draft[];
  readonly strips: readonly Strip[];
  readonly findings: readonly Finding[];
}
