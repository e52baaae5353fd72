import { strToU8 } from "fflate";
import { describe, expect, test } from "vitest";
import { defaultJob } from "#job/default-job.ts";
import { readJobFile, writeJobFile } from "#job/job-file.ts";
import type { Job } from "#job/job.ts";

const none = new Map<string, Uint8Array>();
const saved = (value: unknown) => readJobFile("pair.json", strToU8(JSON.stringify(value))).job;

const full: Job = {
  ...defaultJob(),
  leather: {
    upper: { known: "nappa", name: "bordeaux, second skin", thicknessMm: 1, strips: [{ way: "bias", widthMm: 20, gaugeMm: 100, readings: [{ loadN: 9.81, lengthMm: 112, afterMm: 103.5 }] }] },
    lining: { known: "pig" },
  },
  lasting: { pullToeN: 24, upperTurnDeg: -15, friction: 0.2, tapeN: 0, correct: true },
  log: [{ pair: 1, side: "left", last: "EU 38", leather: "nappa", measured: { throatDepthMm: 71.5, marginsMm: { 1: 12 } }, foretold: { throatDepthMm: 71, perTenthMm: 0.4 }, note: "pulled damp" }],
};

describe("leather, lasting and the log in a saved job", () => {
  test("come back as they were", () => {
    expect(readJobFile("pair.lastwise", writeJobFile(full, none)).job).toEqual(full);
  });

  test("are not yet said in a job of version 4", () => {
    const former = Object.entries(defaultJob()).filter(([field]) => !["leather", "lasting", "log"].includes(field));
    expect(saved({ ...Object.fromEntries(former), version: 4 })).toEqual(defaultJob());
  });

  test("are named where they cannot be", () => {
    const wrong = (change: object) => () => saved({ ...full, ...change });
    expect(wrong({ lasting: { pullToeN: 500 } })).toThrow("the field lasting → pullToeN must be 200 or less");
    expect(wrong({ lasting: { friction: -0.1 } })).toThrow("the field lasting → friction must be 0 or more");
    expect(wrong({ lasting: { pull: 3 } })).toThrow(/pull/);
    expect(wrong({ leather: { upper: { thicknessMm: 0 } } })).toThrow(/thicknessMm must be 0.2 mm or more/);
    expect(wrong({ leather: { upper: { thicknessMm: 90 } } })).toThrow(/thicknessMm must be 6 mm or less/);
    expect(wrong({ leather: { upper: { known: "shark" } } })).toThrow(/leather → upper → known must be one of goat/);
    expect(wrong({ leather: { upper: { strips: [{ way: "along", widthMm: 0, gaugeMm: 100, readings: [] }] } } })).toThrow(/widthMm must be greater than zero/);
    expect(wrong({ log: [{ ...full.log[0], pair: 1.5 }] })).toThrow(/pair must be a whole number/);
    expect(wrong({ log: [{ ...full.log[0], measured: { throatDepthMm: -3 } }] })).toThrow(/throatDepthMm must be greater than zero/);
    expect(wrong({ log: [{ ...full.log[0], measured: { marginsMm: { 11: 12 } } }] })).toThrow(/marginsMm/);
    expect(wrong({ log: [{ ...full.log[0], measured: { marginsMm: { 4: null } } }] })).toThrow(/marginsMm → 4 must be a number/);
    expect(wrong({ log: [{ ...full.log[0], last: "L".repeat(201) }] })).toThrow(/last must have at most 200 letters/);
    expect(wrong({ log: Array.from({ length: 1001 }, () => full.log[0]) })).toThrow(/log must have at most 1,000 shoes/);
  });
});
