// `npm test`: set-up, types, lint, unit tests, builds, browser tests. Ends non-zero when any of them fails.
import { existsSync, readFileSync, rmSync } from "node:fs";
import { inRoot, runPackage } from "./steps.mjs";
import { setUp } from "./setup.mjs";

setUp();
const { check } = await import("./check.mjs");
const { build } = await import("./build.mjs");
const { findChromium, installChromium } = await import("./chromium.mjs");

const passed = [];
const failed = [];
const skipped = [];
const counted = { passed: 0, failed: 0, skipped: 0 };

/** A step that is one check by itself. */
function step(name, ok) {
  (ok ? passed : failed).push(name);
  counted[ok ? "passed" : "failed"]++;
}

/** A step that is many tests: each of them counts. A run that ends badly without a failed test (a file that cannot be loaded) counts as one. */
function tests(name, args, options) {
  const told = inRoot("dist", "tests.json");
  rmSync(told, { force: true });
  const code = runPackage("vitest", "vitest", ["run", "--reporter=default", "--reporter=json", `--outputFile.json=${told}`, ...args], options);
  const all = existsSync(told) ? JSON.parse(readFileSync(told, "utf8")) : {};
  const wrong = all.numFailedTests ?? 0;
  const right = all.numPassedTests ?? 0;
  const ok = code === 0 && wrong === 0 && right > 0;
  (ok ? passed : failed).push(name);
  counted.passed += right;
  counted.failed += ok ? 0 : Math.max(1, wrong);
  counted.skipped += (all.numPendingTests ?? 0) + (all.numTodoTests ?? 0);
}

const wrong = check();
step("types and lint", wrong.length === 0);
if (wrong.length > 0) console.error(`Failed: ${wrong.join(", ")}.`);

// The command line is built first: its tests run what was built, as a maker would.
const cliBuilt = (await build("cli")) === 0;
step("build of the command line", cliBuilt);
tests("unit tests", []);

const appBuilt = (await build("app")) === 0;
step("build of the app", appBuilt);
if (!existsSync(inRoot("vitest.browser.config.ts"))) skipped.push("browser tests (there are none)");
else if (!appBuilt) step("browser tests (the app was not built)", false);
else {
  const chromium = findChromium() ?? installChromium();
  if (chromium) {
    const env = { ...process.env, CHROMIUM_PATH: chromium };
    tests("browser tests", ["--config", "vitest.browser.config.ts"], { env });
  } else {
    // On a machine that guards the project a missing browser must not look like a pass.
    const without = "browser tests (no Chromium here: install Chromium or Chrome, or set CHROMIUM_PATH to one, and run npm test again)";
    if (process.env.CI) step(without, false);
    else skipped.push(without);
  }
}

console.log(`\nPassed: ${passed.join(", ") || "nothing"}.`);
if (counted.skipped > 0) skipped.push(`${counted.skipped} tests (the lines above say why)`);
if (skipped.length > 0) console.log(`Skipped: ${skipped.join(", ")}.`);
if (failed.length > 0) console.log(`Failed: ${failed.join(", ")}.`);
console.log(`${counted.passed} passed, ${counted.failed} failed`);
process.exit(failed.length === 0 ? 0 : 1);
