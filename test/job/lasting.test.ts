import { describe, expect, test } from "vitest";
import { Cancelled, unwatched } from "#base/watch.ts";
import { defaultJob } from "#job/default-job.ts";
import type { Job } from "#job/job.ts";
import { foretell, Laster } from "#job/lasting.ts";
import { adviseDrafts } from "#lasting/log-advice.ts";
import { lastingFrom } from "#lasting/settings.ts";

const none = new Map<string, Uint8Array>();
const job = (change: Partial<Job> = {}): Job => ({ ...defaultJob(), ...change });
// Coarse, so that a pull-over takes a part of a second: what is asked here is what belongs together, not how exact it is.
const sizes = { pulled: 600, coarse: 450 };
const laster = new Laster(undefined, sizes);

describe("pulling a job's upper over", () => {
  test("is remembered for all that it does not follow from, and done anew for all that it does", () => {
    const first = laster.pull(job(), none, unwatched)!;
    expect(laster.pull(job({ sheets: { paper: "A3" }, log: [{ pair: 1, side: "left", last: "another", leather: "another", measured: { throatDepthMm: 70 } }] }), none, unwatched)).toBe(first);
    // An edge as it is cut, with the topline taken up as before: the flat upper is the same one, but no tape holds it.
    const taken = { toplineShorter: 0.02 };
    const taped = laster.pull(job({ shell: { ...taken, edge: "taped" } }), none, unwatched)!, raw = laster.pull(job({ shell: { ...taken, edge: "raw" } }), none, unwatched)!;
    expect(raw.flat).toEqual(taped.flat);
    expect(raw.lasted.ends.throatDepthMm).not.toBe(taped.lasted.ends.throatDepthMm);
    const nappa = laster.pull(job({ leather: { upper: { known: "nappa" } } }), none, unwatched)!;
    expect(nappa.lasted.ends.throatDepthMm).not.toBe(first.lasted.ends.throatDepthMm);
  });

  test("can be stopped before it begins, while the last and the flat upper are made", () => {
    const stop = (): void => {
      throw new Cancelled();
    };
    for (const ask of ["pull", "band", "correct", "turn", "draftEffects"] as const) expect(() => new Laster(undefined, sizes)[ask](job(), none, stop)).toThrow(Cancelled);
  });

  test("is told as a finding where it cannot be done, since the pattern itself can be made", () => {
    const unfound = job({ last: { from: "scan", file: "gone.stl" } as Job["last"] });
    expect(foretell(laster, unfound, none, unwatched).findings.map(({ code }) => code)).toEqual(["not-foretold"]);
  });
});

describe("a corrected pattern", () => {
  test("says what helps where something stands against it, and nothing where nothing does", () => {
    const { advice, reached, rounds, lasted } = laster.correct(job({ leather: { upper: { known: "goat" } }, lasting: { pullToeN: 190 } }), none, unwatched)!;
    expect(rounds.length).toBeGreaterThan(0);
    // Pulled nearly twice as hard as is usual at the toe.
    expect(advice.limits).toContain("strong");
    expect(advice.limits.includes("short")).toBe(!reached);
    expect(advice.tried.map(({ remedy }) => remedy)).toEqual(["tape", "direction", "lining", "leather"]);
    expect(advice.findings.length).toBeGreaterThan(advice.limits.length);
    expect(lasted.ends).toBeDefined();
  });
});

test("what a newton does at a draft is reckoned for the job, and advice goes by it", () => {
  const effects = laster.draftEffects(job(), none, unwatched)!;
  expect(effects.from).toBe("reckoned");
  // Toe and back draw the edge over the feather line (a fact of the bench).
  for (const draft of [1, 4]) expect(effects.effects.find((effect) => effect.draft === draft)!.edgePerN).toBeGreaterThan(0);
  const advice = adviseDrafts({ right: { throatDepthMm: 73 } }, { throatDepthMm: 71 }, { pulls: lastingFrom(), effects });
  expect(advice.moves.length).toBeGreaterThan(0);
});

test("what a shoe's throat is held against comes of the pull-over and two more, as the band tells it", () => {
  const own = new Laster(undefined, sizes), made = own.throatForetold(job(), none, unwatched)!;
  expect(made).toMatchObject({ throatDepthMm: own.pull(job(), none, unwatched)!.lasted.ends.throatDepthMm, factor: 1 });
  // A tenth more does not move a throat by more than leather that gives all of it over the vamp's length of some 70 mm could.
  expect(Math.abs(made.perTenthMm)).toBeGreaterThan(0);
  expect(Math.abs(made.perTenthMm)).toBeLessThan(7);
  // The same again from what is remembered.
  expect(own.throatForetold(job(), none, unwatched)).toEqual(made);
});
