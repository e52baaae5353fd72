// Makes the lint rules from layers.mjs and runs oxlint. `node tools/lint.mjs [folder …]`; the whole project when none is named.
import { mkdirSync, writeFileSync } from "node:fs";
import { core, layers } from "../layers.mjs";
import { inRoot, isMain, runPackage } from "./steps.mjs";

const folders = Object.keys(layers);
const nodeModules = "^(node:.*|fs|path|os|url|process|child_process|worker_threads|crypto|stream|zlib|http|https|net|util)$";
const screen = "^(react|react-dom|idb|commander|vite|playwright-core)(/.*)?$";

/** What a folder must not import: folders downstream of it, by alias or by path, and for the core Node and the screen. */
function bannedImports(folder) {
  const below = folders.filter((other) => other !== folder && !layers[folder].includes(other)).join("|");
  const message = `src/${folder} may look at: ${layers[folder].join(", ") || "nothing"} (layers.mjs).`;
  const patterns = [{ regex: `^#(${below})(/|$)`, message }, { regex: `^(\\.\\./)+(src/)?(${below})(/|$)`, message }];
  if (core.includes(folder)) {
    patterns.push({ regex: nodeModules, message: "The core compiles without Node." }, { regex: screen, message: "The core knows no screen and no command line." });
  } else if (folder === "app") patterns.push({ regex: nodeModules, message: "The app runs in a browser." });
  return ["error", { patterns }];
}

const clockChanceDisk = ["Date", "performance", "localStorage", "sessionStorage", "indexedDB", "fetch", "XMLHttpRequest", "document", "window", "navigator", "process", "Buffer", "setTimeout", "setInterval", "console"];
const chance = { object: "Math", property: "random", message: "Chance comes from a seed handed in (src/base)." };
const bareInverse = ["acos", "asin"].map((property) => ({ object: "Math", property, message: "Use the clamped form of src/base: rounding puts arguments just outside -1 … 1." }));

const overrides = [
  ...folders.map((folder) => ({ files: [`**/src/${folder}/**`], rules: { "no-restricted-imports": bannedImports(folder) } })),
  ...core.map((folder) => ({
    files: [`**/src/${folder}/**`],
    rules: {
      "no-restricted-globals": ["error", ...clockChanceDisk.map((name) => ({ name, message: "The core knows no clock, chance, disk, network or screen." }))],
      "no-restricted-properties": ["error", chance, ...(folder === "base" ? [] : bareInverse)],
    },
  })),
  { files: ["*.config.ts"], rules: { "import/no-default-export": "off" } },
];

export const config = {
  plugins: ["typescript", "unicorn", "oxc", "import", "react"],
  categories: { correctness: "error" },
  rules: {
    eqeqeq: "error",
    "no-var": "error",
    "prefer-const": "error",
    "no-unused-vars": ["error", { argsIgnorePattern: "^_", varsIgnorePattern: "^_$" }],
    "max-lines": ["error", { max: 400 }],
    "typescript/no-explicit-any": "error",
    "typescript/consistent-type-imports": "error",
    "import/no-cycle": "error",
    "import/no-default-export": "error",
    "unicorn/no-empty-file": "error",
    // A typed `new Array<number>(n)` says what it is.
    "unicorn/no-new-array": "off",
  },
  overrides,
};

/** Lints the given paths; returns oxlint's exit code, or its words when `capture` is set. */
export function lint(paths, options = {}) {
  mkdirSync(inRoot("dist"), { recursive: true });
  const file = inRoot("dist", "oxlint.json");
  writeFileSync(file, JSON.stringify(config, null, 1));
  return runPackage("oxlint", "oxlint", ["--config", file, "--quiet", ...paths], options);
}

export const linted = ["src", "test", "bench", "tools", "bin", "layers.mjs", "vitest.config.ts", "--ignore-pattern=test/support/wrong-way/**"];

if (isMain(import.meta.url)) process.exit(lint(process.argv.length > 2 ? process.argv.slice(2) : linted));
