// Who stops the command while it writes gets all of it or nothing: no unfinished folder stays behind.
import { spawnSync } from "node:child_process";
import { mkdirSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { expect, test } from "vitest";
import { contents, scratchFolder } from "./command.ts";

const folder = scratchFolder();
const source = (name: string): string => fileURLToPath(new URL(`../../src/cli/${name}`, import.meta.url));

/** Writes a folder in two steps and is told to stop between them, as by Ctrl C. */
const work = (place: string): string => `
  const stop = () => { mkdirSync(${JSON.stringify(place)}); process.kill(process.pid, "SIGINT"); const until = performance.now() + 100; while (performance.now() < until); rmdirSync(${JSON.stringify(place)}); };`;

function run(name: string, text: string) {
  const script = join(folder, `${name}.mts`);
  writeFileSync(script, `import { mkdirSync, rmdirSync } from "node:fs";\nimport { uninterrupted } from ${JSON.stringify(source("uninterrupted.ts"))};\n${text}`);
  return spawnSync(process.execPath, ["--import", import.meta.resolve("tsx"), script], { encoding: "utf8", timeout: 60_000 });
}

test("what is begun is finished, then the stop is obeyed", () => {
  const place = join(folder, "a", "unfinished");
  mkdirSync(join(folder, "a"));
  const { status, stdout, stderr } = run("kept", `${work(place)}\nawait uninterrupted(stop);\nconsole.log("went on");`);
  expect(stderr).toBe("");
  // 128 and the number of the signal, as shells have it (POSIX.1-2017, Shell, 2.8.2: greater than 128).
  expect(status).toBe(130);
  expect(stdout).toBe("");
  expect(contents(join(folder, "a"))).toEqual([]);
});

test("the same without it leaves the folder behind: the test can fail", () => {
  const place = join(folder, "b", "unfinished");
  mkdirSync(join(folder, "b"));
  const { signal } = run("lost", `${work(place)}\nvoid uninterrupted;\nstop();`);
  expect(signal).toBe("SIGINT");
  expect(contents(join(folder, "b"))).toEqual(["unfinished"]);
});

test("where nobody stops it, the result comes through and later stops are obeyed at once", () => {
  const { status, stdout, signal } = run("calm", `console.log(await uninterrupted(() => 7));\nprocess.kill(process.pid, "SIGINT");\nsetTimeout(() => {}, 5000);`);
  expect([stdout, status, signal]).toEqual(["7\n", null, "SIGINT"]);
});
