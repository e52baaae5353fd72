import { describe, expect, test } from "vitest";
import { explain } from "#base/findings.ts";
import { Refusal } from "#base/refusal.ts";
import { defaultJob } from "#job/default-job.ts";
import type { Job } from "#job/job.ts";
import { Pipeline } from "#job/pipeline.ts";
import { possible } from "#shell/possible.ts";

const none = new Map<string, Uint8Array>();
const pipeline = new Pipeline();

/** What a job is refused with; nothing where it is made. */
function refused(own: Pick<Job, "pieces"> | Pick<Job, "shell">): string | undefined {
  try {
    pipeline.run({ ...defaultJob(), ...own }, none, { triangles: 1500 });
    return undefined;
  } catch (error) {
    if (error instanceof Refusal) return explain(error.finding);
    throw error;
  }
}

const thick = ["upperThicknessMm", "liningThicknessMm", "toePuffMm"] as const;
const laid = ["counterMm", "counterBelowMm", "counterInnerMm", "counterOuterMm", "puffReachMm", "skiveMm", "skiveFeatherMm"] as const;
const wrong = (key: keyof typeof possible) => [-1, possible[key][1] + 0.1, 300, 1e6, 1e300, NaN, Infinity];

describe("a thickness or length that no upper can have", () => {
  test.each(thick)("%s is refused by its name and with what can be, before anything is laid on it", (key) => {
    for (const value of wrong(key)) expect(refused({ pieces: { [key]: value } }), String(value)).toMatch(new RegExp(`^Thickness of the (upper|lining|toe puff): .* cannot be used\\. Give a number of millimetres from 0 to ${possible[key][1]}\\.$`));
  });

  test.each(laid)("%s likewise", (key) => {
    for (const value of wrong(key)) expect(refused({ shell: { [key]: value } }), String(value)).toMatch(new RegExp(`^The (thickness|stiffener|reach|skiving).* cannot be .*\\. Give a number of millimetres from ${possible[key][0]} to ${possible[key][1]}\\.$`));
  });

  test("while each of them alone can be laid at its least and its most", () => {
    for (const key of thick) for (const value of possible[key]) expect(refused({ pieces: { [key]: value } }), `${key} ${value}`).toBeUndefined();
    for (const key of laid) for (const value of possible[key]) expect(refused({ shell: { [key]: value } }), `${key} ${value}`).toBeUndefined();
  });

  test("all of it at its most is refused for the topline, which can be changed", () => {
    const all = { pieces: Object.fromEntries(thick.map((key) => [key, possible[key][1]])), shell: { counterMm: possible.counterMm[1], toplineShorter: 0.08 } };
    expect(refused(all)).toMatch(/^The topline cannot be drawn together by \d+ mm .*make what lies beneath the upper thinner\.$/);
  });
});
