import { describe, expect, test } from "vitest";
import { defaultJob } from "#job/default-job.ts";
import { followLineRule, followPieceRule, onScan, setLines, setMeasure, setPiece } from "#app/state/edits.ts";
import { setScanSide } from "#app/state/scan-edits.ts";
import { freeName } from "#app/state/shelf.ts";

describe("edits of a job", () => {
  test("a size that repeats the stick length goes with it, one of the maker's own stays", () => {
    // Paris point: two thirds of a centimetre (ISO/TS 19407), so 240 mm is EU 36.
    expect(setMeasure(defaultJob(), "stickLengthMm", 240).size).toBe("EU 36");
    expect(setMeasure({ ...defaultJob(), size: "mine" }, "stickLengthMm", 240).size).toBe("mine");
    expect(setMeasure(defaultJob(), "ballWidthMm", 80).size).toBe(defaultJob().size);
  });

  test("leave the job they were given alone", () => {
    const job = defaultJob();
    const before = JSON.stringify(job);
    setLines(job, { throatDepthMm: 80 });
    setPiece(job, "toplineFoldMm", 5);
    setMeasure(job, "ballWidthMm", 80);
    onScan(job, "a.stl");
    expect(JSON.stringify(job)).toBe(before);
  });

  test("following the rule again forgets the maker's own number, and no other", () => {
    const job = setLines(defaultJob(), { throatDepthMm: 80, backHeightMm: 50 });
    expect(followLineRule(job, "throatDepthMm").lines).toEqual({ backHeightMm: 50 });
    expect(followPieceRule(setPiece(job, "backSeamMm", 2), "backSeamMm").pieces).toEqual({});
  });

  test("a scan starts with the lines of the rules, on the maker's paper and with her allowances", () => {
    const job = { ...setPiece(setLines(defaultJob(), { throatDepthMm: 80 }), "backSeamMm", 2), sheets: { paper: "Letter" as const } };
    const opened = onScan(job, "old_last.stl");
    expect(opened).toMatchObject({ last: { from: "scan", file: "old_last.stl" }, lines: {}, sheets: { paper: "Letter" }, pieces: { backSeamMm: 2 }, title: "old last" });
  });

  test("measures belong to a last made from measures, the side choice to a scan", () => {
    const scan = onScan(defaultJob(), "a.stl");
    expect(setMeasure(scan, "ballWidthMm", 80)).toBe(scan);
    expect(setScanSide(scan, "left").last).toEqual({ from: "scan", file: "a.stl", said: { side: "left" } });
    expect(setScanSide(defaultJob(), "left")).toEqual(defaultJob());
  });

  test("two different files of one name get two names, the ending kept", () => {
    const taken = new Set(["last.stl", "last 2.stl"]);
    expect(freeName("last.stl", (n) => taken.has(n))).toBe("last 3.stl");
    expect(freeName("other.stl", (n) => taken.has(n))).toBe("other.stl");
    expect(freeName("bare", (n) => n === "bare")).toBe("bare 2");
  });
});
