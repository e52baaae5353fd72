// Builds dist/app (for the browser) and dist/cli (for Node). `node tools/build.mjs [app] [cli]`; both when none is named.
import { existsSync, mkdirSync, readdirSync, renameSync, rmSync, statSync } from "node:fs";
import { join } from "node:path";
import { inRoot, isMain, newest, root, runPackage } from "./steps.mjs";
import { setUp } from "./setup.mjs";

const around = ["package.json", "package-lock.json", "tools/build.mjs"].map((f) => inRoot(f));
const parts = {
  app: {
    result: inRoot("dist/app/index.html"),
    sources: [inRoot("src"), inRoot("vite.config.ts"), ...around],
    skip: (path) => path === inRoot("src/cli"),
    make: async () => runPackage("vite", "vite", ["build", "--logLevel", "error"], { stdio: ["ignore", 2, 2] }),
  },
  cli: {
    result: inRoot("dist/cli/main.mjs"),
    sources: [inRoot("src"), ...around],
    skip: (path) => path === inRoot("src/app"),
    make: bundleCommandLine,
  },
};

/** True when a part was never built or a source is newer than what was built. */
export function isStale(part) {
  const { result, sources, skip } = parts[part];
  if (!existsSync(result)) return true;
  const built = statSync(result).mtimeMs;
  return sources.some((source) => newest(source, skip) > built);
}

/** Builds a part; returns 0 when done. What the builders say goes to standard error. */
export async function build(part) {
  console.error(`Building ${part === "app" ? "the app" : "the command line"} …`);
  return parts[part].make();
}

/** Built apart and moved over file by file, so that a run beside it never meets half a build. */
async function bundleCommandLine() {
  const vite = await import("vite");
  const apart = inRoot("dist", `cli-${process.pid}`);
  const place = inRoot("dist", "cli");
  try {
    await vite.build({
      root,
      configFile: false,
      logLevel: "error",
      publicDir: false,
      // Everything in one file: reading a library's hundreds of files would take longer than the work.
      ssr: { noExternal: true },
      build: {
        ssr: inRoot("src/cli/main.ts"),
        outDir: apart,
        target: "node20",
        minify: false,
        sourcemap: true,
        rolldownOptions: { output: { entryFileNames: "main.mjs", chunkFileNames: "[name].mjs" } },
      },
    });
    mkdirSync(place, { recursive: true });
    for (const name of readdirSync(apart)) renameSync(join(apart, name), join(place, name));
    return 0;
  } catch (error) {
    console.error(error instanceof Error ? error.message : error);
    return 1;
  } finally {
    rmSync(apart, { recursive: true, force: true });
  }
}

if (isMain(import.meta.url)) {
  setUp();
  const asked = process.argv.slice(2);
  for (const part of asked.length > 0 ? asked : Object.keys(parts)) {
    if (!(part in parts)) {
      console.error(`There is no part "${part}"; there are ${Object.keys(parts).join(" and ")}.`);
      process.exitCode = 1;
    } else if ((await build(part)) !== 0) process.exitCode = 1;
  }
}
