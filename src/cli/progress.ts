// Tells on standard error how far the work is: one line that changes on a terminal, a few plain lines elsewhere.
import type { Watch } from "#base/watch.ts";

const everyMs = 100;
/** Elsewhere a line at least so often, so that a long step is seen to go on. */
const everyLineMs = 3000;

/** The stages of the pipeline in the maker's words; finer steps are shown on a terminal only, under the name of their stage. */
const stages: Readonly<Record<string, string>> = {
  scan: "Reading the scan",
  clean: "Cleaning the scan",
  "clean: made anew": "Making its surface anew",
  "second scan": "Reading the second scan",
  last: "Finding its edge and measures",
  "second last": "Finding the second one's edge and measures",
  foot: "Measuring the foot",
  "laying one last on the other": "Holding the two lasts against each other",
  comparison: "Holding the two lasts against each other",
  tape: "Finding the halves of the tape",
  forme: "Taking its forme",
  lines: "Drawing the lines",
  shell: "Lifting the shell off the last",
  beneath: "Laying lining, stiffener and puff beneath it",
  flatten: "Laying it flat",
  tension: "Drawing its topline together",
  leather: "Reading the strips of its leathers",
  correct: "Correcting the pattern for its leather",
  "correct to the marks": "Pulling it over and correcting it again",
  lining: "Laying the lining flat",
  panels: "Opening the upper along its seams",
  "parts for the leather": "Correcting the pattern for its leather",
  "heel part": "Cutting the heel part off it",
  heel: "Laying the heel flat",
  pieces: "Drawing the pieces",
  wrap: "Laying the card back on the last",
  nicks: "Trying nicks in its feather edge",
  seams: "Trying other seams",
  sheets: "Writing the sheets and measuring them",
};

/** Stages of a pull-over are named as a maker takes them: told by one name, since many pull-overs may follow each other. */
const lasts = (stage: string): boolean => /^(laid on|drafts? \d|between the drafts|at rest|compensate$|band$)/.test(stage);

/** Does the work while showing how far it is; the line is cleared at the end, however the work ends. */
export async function watched<T>(work: (watch: Watch) => T | Promise<T>, to: NodeJS.WriteStream = process.stderr): Promise<T> {
  const onTerminal = to.isTTY === true;
  let shown = "";
  let shownAt = 0;
  const watch: Watch = (stage, fraction) => {
    const words = stages[stage] ?? (stage.startsWith("photo ") ? `Tracing ${stage.slice(6)}` : lasts(stage) ? "Pulling the upper over the last" : shown);
    if (words === "") return;
    // The end of a stage whose finer steps were named since.
    if (words !== shown && fraction >= 1) return;
    const now = performance.now();
    if (words === shown && now - shownAt < (onTerminal ? everyMs : everyLineMs)) return;
    const percent = `${Math.round(100 * Math.min(1, Math.max(0, fraction)))} %`;
    if (onTerminal) to.write(`\r\u001b[K${words} … ${percent}`);
    else to.write(words === shown ? `${words}, ${percent} …\n` : `${words} …\n`);
    [shown, shownAt] = [words, now];
  };
  try {
    return await work(watch);
  } finally {
    if (onTerminal && shown !== "") to.write("\r\u001b[K");
  }
}
