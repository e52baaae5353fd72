// Every file that cannot be used ends with exit code 2, one sentence, and nothing written. The list is the project's own.
import { spawnSync } from "node:child_process";
import { chmodSync, mkdirSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, test } from "vitest";
import { demoMeasurements } from "#last/demo.ts";
import { lastFromMeasures } from "#last/from-measures.ts";
import { binaryStl, box, sheet, spoilt, torus, twice } from "../support/solids.ts";
import { hasShared, sharedData } from "../support/shared.ts";
import { unwatched } from "#base/watch.ts";
import { contents, type Ended, lastwise, scratchFolder } from "./command.ts";

const folder = scratchFolder();
const { mesh } = lastFromMeasures(demoMeasurements, "example", unwatched);
const last = binaryStl(mesh);
const text = (words: string): Uint8Array => new TextEncoder().encode(words);

const files: Readonly<Record<string, Uint8Array>> = {
  "empty.stl": new Uint8Array(0),
  "cut-short.stl": last.subarray(0, Math.floor(last.length / 2)),
  "says-stl.stl": text("solid of a kind\nThis is a letter about STL files and not one of them.\n"),
  "not-numbers.stl": spoilt(last, NaN),
  "infinite.stl": spoilt(last, Infinity),
  "no-triangles.stl": binaryStl({ positions: [], triangles: [] }),
  "one-triangle.stl": binaryStl({ positions: [0, 0, 0, 250, 0, 0, 0, 90, 0], triangles: [0, 1, 2] }),
  "huge-count.stl": binaryStl(mesh, { count: 0x7fffffff }).subarray(0, 5084),
  "torus.stl": binaryStl(torus(85, 40)),
  "plate.stl": binaryStl(box(250, 90, 3, 40)),
  "paper.stl": binaryStl(sheet(250, 90, 40)),
  "cube.stl": binaryStl(box(100, 100, 100, 30)),
  "two-lasts.stl": binaryStl(twice(mesh, 140)),
  "far-too-large.stl": binaryStl(mesh, { scale: 1e7 }),
  "far-too-small.stl": binaryStl(mesh, { scale: 1e-9 }),
  "noise.glb": Uint8Array.from({ length: 4096 }, (_, i) => (i * i * 31 + 7) % 251),
  "noise.ply": text("ply\nformat ascii 1.0\nelement vertex 3\nend_header\n"),
  "points.obj": text("v 0 0 0\nv 1 0 0\nv 0 1 0\n"),
  "letter.txt": text("Dear maker,\n"),
  "broken.lastwise": text("PK\u0003\u0004 and then nothing"),
  "wrong-field.json": text('{"format":"lastwise job","version":1,"title":"x","size":"38","last":{"from":"measures"},"lines":{},"springMm":0,"pieces":{},"paper":"A4"}'),
  "other.json": text('{"hello":"world"}'),
};

/** What is on standard error must be one sentence for a maker, without a trace of the inner works. */
function expectRefusal({ code, out, err }: Ended, saying: RegExp): void {
  expect(err).toMatch(saying);
  expect(code).toBe(2);
  expect(out).toBe("");
  expect(err.trim()).toMatch(/^[^\n]+\.$/);
  expect(err).not.toMatch(/\bat .+:\d+|Error|undefined|NaN mm|\[object/);
}

describe("files that cannot be used", () => {
  test.each(Object.entries(files))("%s", (name, bytes) => {
    const path = join(folder, name);
    writeFileSync(path, bytes);
    const before = contents(folder);
    expectRefusal(lastwise("make", path, "--out", join(folder, "out")), new RegExp(name.replaceAll(".", "\\.") + "|last|scan", "i"));
    expect(contents(folder)).toEqual(before);
  });

  test("a folder, a missing file, a device", () => {
    expectRefusal(lastwise("measure", folder), /is a folder/);
    expectRefusal(lastwise("measure", join(folder, "nowhere.stl")), /There is no file/);
    if (process.platform !== "win32") expectRefusal(lastwise("measure", "/dev/zero"), /not an ordinary file/);
  });

  test.skipIf(!hasShared)("a shoe instead of a last", () => {
    for (const shoe of ["crop_mh_shoes01_one.obj", "wellington_boot.glb"]) expectRefusal(lastwise("measure", sharedData("shoes", shoe)!), /./);
  });

  test("--json says the same on standard output, as data", () => {
    const { code, out } = lastwise("measure", join(folder, "nowhere.stl"), "--json");
    expect(code).toBe(2);
    expect(JSON.parse(out)).toMatchObject({ findings: [{ code: "file-missing", severity: "stop" }] });
  });
});

describe("words that cannot be used", () => {
  test.each([
    [["make", "--example"], /--out/],
    [["make", "--out", "x"], /--example/],
    [["make", "--example", "--out", "x", "--throat", "long"], /--throat wants millimetres from 20 to 150, not "long"/],
    [["make", "--example", "--out", "x", "--throat", "1e9"], /--throat wants/],
    [["make", "--example", "--out", "x", "--paper", "A7"], /A4 or Letter/],
    [["measure", "x.stl", "--side", "middle"], /left or right/],
    [["mesure", "x.stl"], /nknown command/],
    [["measure", "x.stl", "--frobnicate"], /nknown option/],
  ] as const)("%j", (args, saying) => {
    const { code, out, err } = lastwise(...args);
    expect(err).toMatch(saying);
    expect(err).not.toMatch(/\bat .+:\d+/);
    expect(code).toBe(2);
    expect(out).toBe("");
  });
});

describe("places where nothing can be written", () => {
  const asRoot = process.getuid?.() === 0;

  test("a file where the folder should be", () => {
    writeFileSync(join(folder, "taken"), "mine");
    expectRefusal(lastwise("make", "--example", "--out", join(folder, "taken")), /is a file/);
    expectRefusal(lastwise("make", "--example", "--out", join(folder, "taken", "deeper")), /is a file/);
  });

  test.skipIf(process.platform === "win32")("no permission", (context) => {
    const locked = join(folder, "locked");
    mkdirSync(locked);
    chmodSync(locked, 0o555);
    chmodSync(folder, 0o755);
    // Root may write anywhere, so root runs this as nobody.
    const nobody = asRoot ? { uid: 65534, gid: 65534 } : {};
    const maySee = spawnSync(process.execPath, ["-e", 'fs.readFileSync("bin/lastwise.mjs")'], nobody).status === 0;
    if (!maySee) context.skip("the project lies where only root may look, so nobody else can run it");
    const done = spawnSync(process.execPath, ["bin/lastwise.mjs", "make", "--example", "--out", join(locked, "pair")], { encoding: "utf8", ...nobody });
    expectRefusal({ code: done.status, out: done.stdout, err: done.stderr }, /Nothing may be written/);
    expect(contents(locked)).toEqual([]);
  });

  test.skipIf(process.platform === "win32")("writing breaks off half way: what lay there before is untouched", () => {
    const place = join(folder, "half");
    mkdirSync(place);
    writeFileSync(join(place, "pattern.pdf"), "the former pattern");
    const done = spawnSync("bash", ["-c", 'ulimit -f 8; exec "$0" bin/lastwise.mjs make --example --out "$1"', process.execPath, place], { encoding: "utf8" });
    expect(done.status).toBe(2);
    expect(done.stderr).toMatch(/Nothing can be written/);
    expect(contents(place)).toEqual(["pattern.pdf"]);
  });

  test("a full disk", (context) => {
    const disk = join(folder, "disk");
    mkdirSync(disk);
    const mounted = asRoot && spawnSync("mount", ["-t", "tmpfs", "-o", "size=64k", "tmpfs", disk]).status === 0;
    if (!mounted) context.skip("a full disk can only be made where this may mount one");
    try {
      expectRefusal(lastwise("make", "--example", "--out", join(disk, "pair")), /full/);
      expect(contents(disk)).toEqual([]);
    } finally {
      spawnSync("umount", [disk]);
    }
  });
});
