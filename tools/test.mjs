// `npm test`: set-up, types, lint, unit tests, builds, browser tests. Ends non-zero when any of them fails.
import { existsSync } from "node:fs";
import { inRoot, runPackage } from "./steps.mjs";
import { setUp } from "./setup.mjs";

setUp();
const { check } = await import("./check.mjs");
const { build } = await import("./build.mjs");
const { findChromium, installChromium } = await import("./chromium.mjs");

const passed = [];
const failed = [];
const skipped = [];
const step = (name, ok) => (ok ? passed : failed).push(name);

const wrong = check();
step("types and lint", wrong.length === 0);
if (wrong.length > 0) console.error(`Failed: ${wrong.join(", ")}.`);

// The command line is built first: its tests run what was built, as a maker would.
const cliBuilt = (await build("cli")) === 0;
step("build of the command line", cliBuilt);
step("unit tests", runPackage("vitest", "vitest", ["run"]) === 0);

const appBuilt = (await build("app")) === 0;
step("build of the app", appBuilt);
if (!existsSync(inRoot("vitest.browser.config.ts"))) skipped.push("browser tests (there are none)");
else if (!appBuilt) failed.push("browser tests (the app was not built)");
else {
  const chromium = findChromium() ?? installChromium();
  if (chromium) {
    const env = { ...process.env, CHROMIUM_PATH: chromium };
    step("browser tests", runPackage("vitest", "vitest", ["run", "--config", "vitest.browser.config.ts"], { env }) === 0);
  } else {
    // On a machine that guards the project a missing browser must not look like a pass.
    const without = "browser tests (no Chromium here: install Chromium or Chrome, or set CHROMIUM_PATH to one, and run npm test again)";
    (process.env.CI ? failed : skipped).push(without);
  }
}

console.log(`\nPassed: ${passed.join(", ") || "nothing"}.`);
if (skipped.length > 0) console.log(`Skipped: ${skipped.join(", ")}.`);
if (failed.length > 0) console.log(`Failed: ${failed.join(", ")}.`);
console.log(failed.length === 0 ? "All tests passed." : "Some tests failed.");
process.exit(failed.length === 0 ? 0 : 1);
