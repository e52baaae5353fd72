// Tells on standard error how far the work is: one line that changes on a terminal, a few plain lines elsewhere.
import type { Watch } from "#base/watch.ts";

const everyMs = 100;

export interface Progress {
  readonly watch: Watch;
  /** Clears the line, so that what follows starts clean. */
  readonly end: () => void;
}

export function showProgress(to: NodeJS.WriteStream = process.stderr): Progress {
  let stage = "";
  let shownAt = 0;
  const onTerminal = to.isTTY === true;
  const watch: Watch = (name, fraction) => {
    if (onTerminal) {
      const now = performance.now();
      if (name === stage && now - shownAt < everyMs) return;
      shownAt = now;
      to.write(`\r\u001b[K${name} … ${Math.round(100 * Math.min(1, Math.max(0, fraction)))} %`);
    } else if (name !== stage) to.write(`${name} …\n`);
    stage = name;
  };
  return { watch, end: () => void (onTerminal && stage !== "" && to.write("\r\u001b[K")) };
}
