import type { Desk } from "../desk.ts";
import type { SeenLast } from "./seen-last.ts";
import { workInHand, type WorkInHand } from "./work-in-hand.ts";

/** The work, or a scan that waits to become it. */
export function scanWork(desk: Desk): WorkInHand {
  const { waiting } = desk.now;
  return workInHand(desk, waiting?.last.from === "scan" ? waiting : undefined);
}

/** The last to be shown at the first station, if there is one. */
export function seenLast({ now: { waiting, waitingLast, pair } }: Desk): SeenLast | undefined {
  if (waiting?.last.from === "scan" && waitingLast) return waitingLast;
  return pair?.from === "last" ? pair : undefined;
}
