// What the pages say exists: every relative link leads somewhere, every option and script named is there.
import { existsSync, readFileSync, readdirSync, statSync } from "node:fs";
import { dirname, join } from "node:path";
import { expect, test } from "vitest";
import { lastwise } from "./cli/command.ts";

const pages = ["README.md", "CONTRIBUTING.md", "CHANGELOG.md", "examples/README.md", ...(readdirSync("docs", { recursive: true }) as string[]).filter((name) => name.endsWith(".md")).map((name) => join("docs", name))];

/** Targets of relative links that are not there. */
function broken(text: string, folder: string): string[] {
  const targets = [...text.matchAll(/\]\(([^)\s]+)\)/g)].map((m) => m[1]!.replace(/#.*$/, ""));
  return targets.filter((target) => target !== "" && !/^[a-z]+:/.test(target) && !existsSync(join(folder, target)));
}

test("links lead somewhere", () => {
  expect(pages.length).toBeGreaterThan(8);
  expect(pages.flatMap((page) => broken(readFileSync(page, "utf8"), dirname(page)).map((target) => `${page} -> ${target}`))).toEqual([]);
  expect(broken("[x](nowhere.md) [y](README.md)", ".")).toEqual(["nowhere.md"]);
});

test("options and scripts that the pages name exist", () => {
  const help = ["measure", "make", "strip"].map((command) => lastwise(command, "--help").out).join("\n");
  const scripts = Object.keys((JSON.parse(readFileSync("package.json", "utf8")) as { scripts: Record<string, string> }).scripts);
  const text = pages.map((page) => readFileSync(page, "utf8")).join("\n");
  const lines = text.split("\n").filter((line) => line.includes("npx lastwise"));
  const named = [...lines.join("\n").matchAll(/ (--[a-z-]+)/g)].map((m) => m[1]!);
  expect(named.length).toBeGreaterThan(3);
  expect(named.filter((option) => !help.includes(`${option} `))).toEqual([]);
  const run = [...text.matchAll(/npm run ([a-z]+)/g)].map((m) => m[1]!);
  expect(run.filter((script) => !scripts.includes(script))).toEqual([]);
});

test("the page of the command line tells every option of every command, and none that is not there", () => {
  const page = readFileSync("docs/guide/command-line.md", "utf8");
  const helped = ["measure", "make", "card", "strip"].flatMap((command) => [...lastwise(command, "--help").out.matchAll(/^ {2}(--[a-z-]+)/gm)].map((m) => m[1]!));
  const told = [...page.matchAll(/(--[a-z][a-z-]*)/g)].map((m) => m[1]!);
  expect([...new Set(told)].sort()).toEqual([...new Set(helped)].filter((option) => option !== "--help").sort());
});

test("every library we stand on is named with its reason, and none that is gone", () => {
  const { dependencies, devDependencies } = JSON.parse(readFileSync("package.json", "utf8")) as Record<string, Record<string, string>>;
  const page = readFileSync("docs/dependencies.md", "utf8");
  const wanted = [...Object.keys(dependencies!), ...Object.keys(devDependencies!)].filter((name) => !name.startsWith("@types/"));
  const python = readFileSync("crosscheck/requirements.txt", "utf8").split("\n").filter(Boolean).map((line) => line.split("==")[0]!);
  const named = page.split("\n").filter((line) => line.startsWith("| `")).flatMap((line) => [...line.split(" |")[0]!.matchAll(/`([^`]+)`/g)].map((m) => m[1]!));
  expect(named.filter((name) => !name.startsWith("@types/")).sort()).toEqual([...wanted, ...python].sort());
});

test("pictures stay light", () => {
  for (const name of (readdirSync("docs", { recursive: true }) as string[]).filter((file) => /\.(png|svg|jpg)$/.test(file))) expect(statSync(join("docs", name)).size, name).toBeLessThan(300_000);
});
