// What the tools share: where the project lies, how a step is run, and how old things are. Node's built-ins alone.
import { spawnSync } from "node:child_process";
import { existsSync, readdirSync, readFileSync, statSync } from "node:fs";
import { dirname, join } from "node:path";
import { fileURLToPath, pathToFileURL } from "node:url";

export const root = join(dirname(fileURLToPath(import.meta.url)), "..");
export const inRoot = (...parts) => join(root, ...parts);

/** True when the given module (`import.meta.url`) is the one that Node was asked to run. */
export const isMain = (url) => process.argv[1] !== undefined && url === pathToFileURL(process.argv[1]).href;

/** Runs a program with its output shown; returns its exit code. A program that cannot be started counts as 127. */
export function run(command, args, options = {}) {
  const done = spawnSync(command, args, { cwd: root, stdio: "inherit", ...options });
  if (done.error) console.error(`${command} could not be started: ${done.error.message}`);
  return done.status ?? (done.error ? 127 : 1);
}

/** Runs a program of an installed package (`tsc` of `typescript`) by this same Node, without a shell. */
export function runPackage(name, program, args, options = {}) {
  const home = inRoot("node_modules", name);
  const { bin } = JSON.parse(readFileSync(join(home, "package.json"), "utf8"));
  const file = typeof bin === "string" ? bin : bin[program];
  return run(process.execPath, [join(home, file), ...args], options);
}

/** Time of the latest change of a file, or of anything in a folder (the folder's own time too, so that a removal counts). */
export function newest(path, skip = () => false) {
  if (!existsSync(path) || skip(path)) return 0;
  const state = statSync(path);
  if (!state.isDirectory()) return state.mtimeMs;
  let latest = state.mtimeMs;
  for (const name of readdirSync(path)) latest = Math.max(latest, newest(join(path, name), skip));
  return latest;
}

/** Ends the program with a sentence. */
export function giveUp(sentence, code = 1) {
  console.error(sentence);
  process.exit(code);
}
