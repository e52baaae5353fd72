// Pictures on the command line: what is asked wrongly ends with exit code 2 and one sentence that says what to do.
import { writeFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, test } from "vitest";
import { pngOf } from "../support/png.ts";
import { contents, lastwise, scratchFolder } from "./command.ts";

const folder = scratchFolder();
const put = (name: string, bytes: Uint8Array): string => {
  const path = join(folder, name);
  writeFileSync(path, bytes);
  return path;
};
const grey = (width: number, height: number) => pngOf({ width, height, rgba: new Uint8Array(4 * width * height).fill(128) });
const blank = put("blank.png", grey(1600, 1200));
const other = put("other.png", grey(1400, 1200));
const cut = put("cut.png", grey(1600, 1200).subarray(0, 200));
const phone = put("phone.heic", new TextEncoder().encode("\0\0\0\u0018ftypheic\0\0\0\0"));
const scan = put("scan.stl", new TextEncoder().encode("solid a\nendsolid a\n"));
const out = ["--out", join(folder, "out")];

describe("pictures that cannot be used, or are asked of wrongly", () => {
  test.each([
    ["without saying which foot", [blank], /--tape right or --tape left/],
    ["with a scan among them", [blank, scan, "--tape", "right"], /blank\.png is a picture and scan\.stl is not/],
    ["called the same twice", [blank, blank, "--tape", "right"], /Two of the pictures are called blank\.png/],
    ["cut short", [cut, "--tape", "right"], /cut\.png is damaged/],
    ["of a kind that is not read", [phone, "--tape", "left"], /phone\.heic is .*JPEG or PNG/],
    ["without the card", [blank, "--tape", "right"], /card was not found/],
    ["without the card, named where there are two", [blank, other, "--tape", "right"], /^blank\.png: The printed card was not found/],
    ["that are a scan", [scan, "--tape", "right"], /--tape is for pictures/],
    ["that are a scan, lying face down", [scan, "--face-down"], /--face-down is for .*scan\.stl/],
    ["that are the example, with a bar", ["--example", "--bar", "199"], /--bar is for .*the example/],
    ["with a bar out of reach", [blank, "--tape", "right", "--bar", "100"], /--bar wants millimetres/],
  ] as const)("%s", (_, words, saying) => {
    const before = contents(folder);
    const { code, out: said, err } = lastwise("make", ...words, ...out);
    expect(err).toMatch(saying);
    expect(code).toBe(2);
    expect(said).toBe("");
    expect(err).not.toMatch(/\bat .+:\d+|undefined|\[object/);
    expect(contents(folder)).toEqual(before);
  });

  test("have no last to be measured", () => {
    const { code, err } = lastwise("measure", blank);
    expect(code).toBe(2);
    expect(err).toMatch(/blank\.png is a picture/);
  });

  test("two scans are not one last", () => {
    const { code, err } = lastwise("make", scan, put("second.stl", new Uint8Array(10)), ...out);
    expect(code).toBe(2);
    expect(err).toMatch(/2 files are named/);
  });
});
