// Makes a fresh clone ready: checks Node, installs what package-lock.json names and is not there yet. Node's built-ins alone.
import { existsSync, readFileSync, symlinkSync } from "node:fs";
import { join } from "node:path";
import { giveUp, inRoot, isMain, run } from "./steps.mjs";

const wanted = [20, 19];

/** Everything that must be there before any other step; does nothing when it is. `quiet` sends npm's words to standard error. */
export function setUp({ quiet = false, failCode = 1 } = {}) {
  const stop = (sentence) => giveUp(sentence, failCode);
  const [major, minor] = process.versions.node.split(".").map(Number);
  if (major < wanted[0] || (major === wanted[0] && minor < wanted[1])) {
    stop(`Lastwise needs Node ${wanted.join(".")} or newer; this is Node ${process.versions.node}. Install a newer one and run the command again.`);
  }
  const why = whatIsMissing();
  if (!why) return linkCommand();
  console.error(`Set-up: ${why}; installing (once, needs the network).`);
  const options = quiet ? { stdio: ["ignore", 2, 2] } : {};
  if (npm(["ci"], options) !== 0 && npm(["install"], options) !== 0) {
    stop("Set-up failed: npm could not install the packages named in package-lock.json. Check the network and run the command again.");
  }
  const still = whatIsMissing();
  if (still) stop(`Set-up failed: ${still} after the installation. Delete the folder node_modules and run the command again.`);
  linkCommand();
}

/** Puts our own command among the installed ones, where `npx lastwise` looks first; without it npx finds it too, but later. */
function linkCommand() {
  const link = inRoot("node_modules", ".bin", "lastwise");
  if (process.platform === "win32" || existsSync(link)) return;
  try {
    symlinkSync(join("..", "..", "bin", "lastwise.mjs"), link);
  } catch {
    // A read-only tree, or another run that was quicker: npx still finds the command by package.json.
  }
}

/** Undefined when node_modules holds exactly the versions of the lock file; packages for other machines may be absent. */
function whatIsMissing() {
  const lock = lockedPackages(inRoot("package-lock.json"));
  if (!existsSync(inRoot("node_modules"))) return "the packages are not installed yet";
  const here = lockedPackages(inRoot("node_modules", ".package-lock.json"));
  for (const [path, entry] of Object.entries(lock)) {
    if (!path || entry.link) continue;
    const installed = here[path];
    if (!installed && (entry.optional || entry.peer)) continue;
    if (!installed || !existsSync(inRoot(path))) return `${path.replace(/^.*node_modules\//, "")} is not installed`;
    if (installed.version !== entry.version) return `${path.replace(/^.*node_modules\//, "")} is not at the version of package-lock.json`;
  }
  return undefined;
}

function lockedPackages(file) {
  return existsSync(file) ? (JSON.parse(readFileSync(file, "utf8")).packages ?? {}) : {};
}

function npm(args, options) {
  const quiet = ["--no-audit", "--no-fund", "--loglevel=error"];
  const script = process.env.npm_execpath;
  if (script && /npm-cli\.c?js$/.test(script)) return run(process.execPath, [script, ...args, ...quiet], options);
  return run("npm", [...args, ...quiet], { shell: process.platform === "win32", ...options });
}

if (isMain(import.meta.url)) {
  setUp();
  console.log("Set-up: all is there.");
}
