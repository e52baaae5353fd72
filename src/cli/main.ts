// The command line: `lastwise measure`, `make`, `card` and `strip`. Says what was done, and ends 0, 1 (look before cutting) or 2 (could not).
import { readFileSync } from "node:fs";
import { Command, CommanderError } from "commander";
import { explain } from "#base/findings.ts";
import { Refusal } from "#base/refusal.ts";
import { exit } from "./exit.ts";
import { addCard } from "./card.ts";
import { addMake } from "./make.ts";
import { addMeasure } from "./measure.ts";
import { addStrip } from "./strip.ts";

const { version } = JSON.parse(readFileSync(new URL("../../package.json", import.meta.url), "utf8")) as { version: string };

const program = new Command("lastwise")
  .description("From the scan of a shoe last to the true-scale pattern of one pair of flat pumps.")
  .version(version, "--version", "say which version this is")
  .helpOption("--help", "explain the command and its options")
  .helpCommand(false)
  .configureOutput({ outputError: (text, write) => write(inWords(text)) })
  .showHelpAfterError("(lastwise --help explains the commands)")
  .exitOverride()
  .addHelpText("after", "\nEnds with 0 when done, 1 when done but something must be looked at before cutting, 2 when it could not be done.");
addMeasure(program);
addMake(program);
addCard(program);
addStrip(program);

const asked = (option: string): boolean => process.argv.includes(option);

// Someone who stops reading our output (a pager, `head`) is no error.
process.stdout.on("error", (error: NodeJS.ErrnoException) => process.exit(error.code === "EPIPE" ? exit.done : exit.refused));
// Nor is someone who does not want to see how far the work is.
process.stderr.on("error", () => {});
process.exitCode = await program.parseAsync().then(() => process.exitCode ?? exit.done, tell);

/** Says what went wrong in one sentence; returns the exit code. Who asked for JSON gets one object, whatever went wrong. */
function tell(error: unknown): number {
  if (error instanceof CommanderError) {
    if (error.exitCode === 0) return exit.done;
    if (asked("--json")) report("asked-wrongly", inWords(error.message));
    return exit.refused;
  }
  if (error instanceof Refusal) {
    console.error(error.message);
    if (asked("--json")) report(error.finding.code, explain(error.finding));
  } else {
    const sorry = "Something went wrong inside Lastwise: this is our mistake, not yours. Nothing was written.";
    console.error(sorry);
    if (asked("--verbose")) console.error(error);
    else console.error("Run the same command with --verbose and report what it prints, if you can with the file you used.");
    if (asked("--json")) report("our-mistake", sorry);
  }
  return exit.refused;
}

// Declarations, so that they are there before the line above that waits for the work.
function report(code: string, text: string): void {
  console.log(JSON.stringify({ findings: [{ code, severity: "stop", text }] }, null, 1));
}
function inWords(said: string): string {
  return said.replace(/^error: (.)/, (_, first: string) => first.toUpperCase());
}
