import type { TapeSaid } from "#tape/said.ts";
import type { Desk } from "../desk.ts";
import { tapeOf } from "../state/tape-edits.ts";
import { workInHand, type WorkInHand } from "../state/work-in-hand.ts";

/** The taped pattern that the column speaks of: the work, or photographs that still wait to become one. */
export interface TapeWork extends WorkInHand {
  readonly said: TapeSaid;
}

export function tapeWork(desk: Desk): TapeWork | undefined {
  const work = workInHand(desk, desk.now.waiting);
  const said = tapeOf(work.job);
  return said && { ...work, said };
}
