#!/usr/bin/env node
// Runs the command line; sets up and builds it first when that was not done or the sources changed.
import { realpathSync } from "node:fs";
import { dirname, join } from "node:path";
import { fileURLToPath, pathToFileURL } from "node:url";

const home = join(dirname(realpathSync(fileURLToPath(import.meta.url))), "..");
const tool = (path) => import(pathToFileURL(join(home, path)).href);

try {
  const { isStale, build } = await tool("tools/build.mjs");
  if (isStale("cli")) {
    const { setUp } = await tool("tools/setup.mjs");
    setUp({ quiet: true, failCode: 2 });
    if ((await build("cli")) !== 0) throw new Error("the lines above say why");
  }
  await tool("dist/cli/main.mjs");
} catch (error) {
  console.error(`The command line could not be built or started: ${error instanceof Error ? error.message : error}.`);
  process.exitCode = 2;
}
