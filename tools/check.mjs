// `npm run check`: set-up, the three type checks (core, app, Node) and lint. Ends non-zero when any of them fails.
import { existsSync } from "node:fs";
import { inRoot, isMain, runPackage } from "./steps.mjs";
import { setUp } from "./setup.mjs";
import { lint, linted } from "./lint.mjs";

/** Runs each check even when one before it failed; returns the names of those that failed. */
export function check() {
  const failed = [];
  for (const [name, file] of [["types of the core", "tsconfig.json"], ["types of the app", "tsconfig.app.json"], ["types of command line, tests and benches", "tsconfig.node.json"]]) {
    console.log(`Checking ${name} …`);
    if (runPackage("typescript", "tsc", ["-p", inRoot(file)]) !== 0) failed.push(name);
  }
  console.log("Linting …");
  if (lint(linted.filter((path) => path.startsWith("-") || existsSync(inRoot(path)))) !== 0) failed.push("lint");
  return failed;
}

if (isMain(import.meta.url)) {
  setUp();
  const failed = check();
  console.log(failed.length === 0 ? "All checks passed." : `Failed: ${failed.join(", ")}.`);
  process.exit(failed.length === 0 ? 0 : 1);
}
