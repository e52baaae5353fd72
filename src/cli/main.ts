// The command line: `lastwise measure` and `lastwise make`. Says what was done, and ends 0, 1 (look before cutting) or 2 (could not).
import { readFileSync } from "node:fs";
import { Command, CommanderError } from "commander";
import { explain, type Finding } from "#base/findings.ts";
import { Refusal } from "#base/refusal.ts";
import { exit } from "./exit.ts";
import { addCard } from "./card.ts";
import { addMake } from "./make.ts";
import { addMeasure } from "./measure.ts";

const { version } = JSON.parse(readFileSync(new URL("../../package.json", import.meta.url), "utf8")) as { version: string };

const program = new Command("lastwise")
  .description("From the scan of a shoe last to the true-scale pattern of one pair of flat pumps.")
  .version(version, "--version", "say which version this is")
  .helpOption("--help", "explain the command and its options")
  .helpCommand(false)
  .configureOutput({ outputError: (text, write) => write(text.replace(/^error: (.)/, (_, first: string) => first.toUpperCase())) })
  .showHelpAfterError("(lastwise --help explains the commands)")
  .exitOverride()
  .addHelpText("after", "\nEnds with 0 when done, 1 when done but something must be looked at before cutting, 2 when it could not be done.");
addMeasure(program);
addMake(program);
addCard(program);

const asked = (option: string): boolean => process.argv.includes(option);

// Someone who stops reading our output (a pager, `head`) is no error.
process.stdout.on("error", (error: NodeJS.ErrnoException) => process.exit(error.code === "EPIPE" ? exit.done : exit.refused));
// Nor is someone who does not want to see how far the work is.
process.stderr.on("error", () => {});
process.exitCode = await program.parseAsync().then(() => process.exitCode ?? exit.done, tell);

/** Says what went wrong in one sentence; returns the exit code. */
function tell(error: unknown): number {
  if (error instanceof CommanderError) return error.exitCode === 0 ? exit.done : exit.refused;
  if (error instanceof Refusal) {
    console.error(error.message);
    if (asked("--json")) console.log(JSON.stringify({ findings: [asRefused(error.finding)] }, null, 1));
  } else {
    console.error("Something went wrong inside Lastwise: this is our mistake, not yours. Nothing was written.");
    if (asked("--verbose")) console.error(error);
    else console.error("Run the same command with --verbose and report what it prints, if you can with the file you used.");
  }
  return exit.refused;
}

// A declaration, so that it is there before the line above that waits for the work.
function asRefused(f: Finding) {
  return { code: f.code, severity: "stop", text: explain(f) };
}
