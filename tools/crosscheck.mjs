// `npm run crosscheck`: holds the results of the example pair against outside Python libraries, in an environment of its own.
// `npm run crosscheck -- dxf` runs only the checks whose name holds the word.
import { spawnSync } from "node:child_process";
import { createHash } from "node:crypto";
import { existsSync, mkdirSync, mkdtempSync, readFileSync, readdirSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { giveUp, inRoot, run, runPackage } from "./steps.mjs";
import { setUp } from "./setup.mjs";

const windows = process.platform === "win32";
const venv = inRoot(".venv");
const python = join(venv, windows ? "Scripts/python.exe" : "bin/python");
const requirements = inRoot("crosscheck/requirements.txt");
const notChecks = ["checks.py", "sheet_law.py", "sheet_on_form.py", "making_said.py"];

setUp();
prepareEnvironment();
const work = mkdtempSync(join(tmpdir(), "lastwise-crosscheck-"));
try {
  process.exitCode = crosscheck(process.argv.slice(2));
} finally {
  rmSync(work, { recursive: true, force: true });
}

function crosscheck(words) {
  console.log("Making the example pair …");
  if (!make(["--example", "--paper", "A4"], work)) return refuse("the example pair could not be made");
  for (const set of JSON.parse(readFileSync(inRoot("crosscheck/sets.json"), "utf8"))) {
    console.log(`Making ${set.name} …`);
    if (!make([jobOf(set), "--untried", ...wordsOf(set)], join(work, "sets", set.name))) return refuse(`the pair of ${set.name} could not be made`);
  }
  if (runPackage("tsx", "tsx", [inRoot("crosscheck/export-last.ts"), work]) !== 0) return refuse("the example last could not be exported");

  const scripts = readdirSync(inRoot("crosscheck")).filter((name) => name.endsWith(".py") && !notChecks.includes(name)).sort();
  const chosen = scripts.filter((name) => words.length === 0 || words.some((word) => name.includes(word)));
  let passed = 0;
  let failed = 0;
  for (const name of chosen) {
    console.log(`\n== ${name} ==`);
    const done = spawnSync(python, [inRoot("crosscheck", name), work], { cwd: inRoot(), encoding: "utf8", stdio: ["ignore", "pipe", "inherit"] });
    const said = done.stdout ?? "";
    process.stdout.write(said);
    const counts = /(\d+) passed, (\d+) failed\s*$/.exec(said);
    const [agreed, differed] = counts ? [Number(counts[1]), Number(counts[2])] : [0, 0];
    passed += agreed;
    failed += differed;
    // A check that ended badly without saying why, or well without having compared anything, is a failure too.
    if (differed === 0 && (done.status !== 0 || agreed === 0)) failed++;
  }
  console.log(`\nAll cross-checks together:\n${passed} passed, ${failed} failed`);
  return failed === 0 && passed > 0 ? 0 : 1;
}

/** Runs the command line as a maker would; findings to look at are no failure. */
function make(words, folder) {
  const made = run(process.execPath, [inRoot("bin/lastwise.mjs"), "make", ...words, "--out", folder], { stdio: ["ignore", "ignore", 2] });
  return made === 0 || made === 1;
}

/** Further words for the command line, as in a shell: what holds spaces stands between single quotes. */
function wordsOf({ words = "" }) {
  return Array.from(words.matchAll(/'([^']*)'|\S+/g), ([word, quoted]) => quoted ?? word);
}

/** A job like one of the examples with what the set says put over it, as a file; returns its path. */
function jobOf({ name, from = "almond-37.json", words: _, ...own }) {
  const job = JSON.parse(readFileSync(inRoot("examples", from), "utf8"));
  for (const [key, value] of Object.entries(own)) job[key] = typeof value === "object" ? { ...job[key], ...value } : value;
  mkdirSync(join(work, "jobs"), { recursive: true });
  const path = join(work, "jobs", `${name}.json`);
  writeFileSync(path, JSON.stringify(job));
  return path;
}

/** Makes .venv when it is missing or the list of libraries changed. */
function prepareEnvironment() {
  const stamp = join(venv, "made-from");
  const wanted = createHash("sha256").update(readFileSync(requirements)).digest("hex");
  if (existsSync(python) && existsSync(stamp) && readFileSync(stamp, "utf8") === wanted) return;
  const base = (windows ? ["py", "python"] : ["python3", "python"]).find((name) => spawnSync(name, ["-c", "import sys, venv, ensurepip; sys.exit(sys.version_info < (3, 11))"]).status === 0);
  if (!base) skip("Python 3.11 or newer with its venv module is not installed");
  console.log("Setting up Python's side (once, needs the network) …");
  rmSync(venv, { recursive: true, force: true });
  if (run(base, ["-m", "venv", venv]) !== 0) skip("Python could not make an environment of its own");
  const pip = ["-m", "pip", "install", "--quiet", "--disable-pip-version-check", "--requirement", requirements];
  if (run(python, pip) !== 0) skip("the Python libraries could not be installed");
  writeFileSync(stamp, wanted);
}

/** Outside of CI a machine without Python may pass by; in CI a check that did not run counts as failed. */
function skip(why) {
  if (process.env.CI) giveUp(`Cross-checks failed: ${why}.`);
  console.log(`Cross-checks skipped: ${why}.`);
  process.exit(0);
}

function refuse(why) {
  console.error(`Cross-checks failed: ${why}.`);
  return 1;
}
