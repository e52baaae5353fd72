// Writing is short but not one step: who stops the command then gets all of it or nothing.
import { constants } from "node:os";
import { setImmediate } from "node:timers/promises";

const signals = ["SIGINT", "SIGTERM", "SIGHUP"] as const;

/**
 * Does short work that waits for nothing; a signal to stop that comes meanwhile is obeyed right after it. Long work must not be done
 * in here: it could not be stopped.
 */
export async function uninterrupted<T>(work: () => T): Promise<T> {
  let heard: (typeof signals)[number] | undefined;
  const hear = (signal: NodeJS.Signals): void => void (heard = signals.find((s) => s === signal));
  for (const signal of signals) process.on(signal, hear);
  try {
    return work();
  } finally {
    // The system's word reaches us only when we listen again: the first turn may be in the midst of this round, the second comes after
    // a whole one. A timer may be due before that, as its clock stood still during the work.
    await setImmediate();
    await setImmediate();
    for (const signal of signals) process.off(signal, hear);
    // As the shell expects of one that was stopped.
    if (heard) process.exit(128 + constants.signals[heard]);
  }
}
