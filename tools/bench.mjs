// `npm run bench`: runs every bench/*.ts in turn (`npm run bench -- flatten` only those whose name holds the word).
import { existsSync, readdirSync } from "node:fs";
import { giveUp, inRoot, runPackage } from "./steps.mjs";
import { setUp } from "./setup.mjs";

setUp();
const words = process.argv.slice(2);
const all = existsSync(inRoot("bench")) ? readdirSync(inRoot("bench")).filter((name) => name.endsWith(".ts")).sort() : [];
const chosen = all.filter((name) => words.length === 0 || words.some((word) => name.includes(word)));
if (chosen.length === 0) giveUp(`There is no bench to run${words.length > 0 ? ` named like ${words.join(" or ")}; there are ${all.join(", ")}` : ""}.`);
const failed = chosen.filter((name) => {
  console.log(`\n== ${name} ==`);
  return runPackage("tsx", "tsx", [inRoot("bench", name)]) !== 0;
});
console.log(failed.length === 0 ? "\nAll benches ran." : `\nFailed: ${failed.join(", ")}.`);
process.exit(failed.length === 0 ? 0 : 1);
