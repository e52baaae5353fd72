#!/usr/bin/env node
// Runs the command line; sets up and builds it first when that was not done or the sources changed.
import { realpathSync } from "node:fs";
import { dirname, join } from "node:path";
import { fileURLToPath, pathToFileURL } from "node:url";

const home = join(dirname(realpathSync(fileURLToPath(import.meta.url))), "..");
const tool = (path) => import(pathToFileURL(join(home, path)).href);

const { isStale, build } = await tool("tools/build.mjs");
if (isStale("cli")) {
  const { setUp } = await tool("tools/setup.mjs");
  setUp({ quiet: true });
  if ((await build("cli")) !== 0) {
    console.error("The command line could not be built; the lines above say why.");
    process.exit(2);
  }
}
await tool("dist/cli/main.mjs");
