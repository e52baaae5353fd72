import { expect, test } from "vitest";
import { defaultJob } from "#job/default-job.ts";
import { Pipeline } from "#job/pipeline.ts";
import { Prover } from "#job/proof.ts";
import { stageWords, wholeShare } from "#app/state/stage-words.ts";

const names = ["inner.jpg", "outer.jpg"];
type Far = ReturnType<typeof wholeShare>;
const begin = { fraction: 0, pictures: { names, behind: 0 } };
const through = (from: Far, steps: readonly (readonly [string, number])[]): readonly Far[] => {
  const all: Far[] = [];
  let now = from;
  for (const [stage, fraction] of steps) all.push((now = wholeShare({ on: "pair", ...now }, stage, fraction)));
  return all;
};

test("the bar goes on through every picture, never back, and leaves room for the rest", () => {
  const one = (name: string): readonly (readonly [string, number])[] => [[`photo ${name}`, 0], ["card", 0], ["card", 0.7], ["flat", 0], ["flat", 0.5], ["outlines", 0], ["outlines", 1], [`photo ${name}`, 1]];
  const seen = through(begin, [...one("inner.jpg"), ...one("outer.jpg"), ["tape", 0], ["pieces", 1]]).map((s) => s.fraction);
  for (let i = 1; i < seen.length; i++) expect(seen[i]!).toBeGreaterThanOrEqual(seen[i - 1]!);
  // After the first of two pictures half of what they take is done.
  expect(seen[7]).toBeCloseTo(0.46, 6);
  expect(seen[15]).toBeCloseTo(0.92, 6);
  expect(seen.at(-1)).toBe(1);
});

test("a picture that is known already is passed over", () => {
  expect(through(begin, [["photo outer.jpg", 0]]).at(-1)).toEqual({ fraction: 0.46, pictures: { names, behind: 1 } });
});

test("the reading of a picture is told by its name", () => {
  expect(stageWords({ on: "pair", trial: true, stage: "photo inner.jpg" })).toBe("Reading inner.jpg");
});

test("every stage that working a pair out and trying it out tells has words of its own", () => {
  const told = new Set<string>();
  new Prover().prove(defaultJob(), new Map(), (stage) => void told.add(stage));
  new Pipeline().run({ ...defaultJob(), lasting: { correct: true } }, new Map(), { triangles: 1500, watch: (stage) => void told.add(stage) });
  expect(told.size).toBeGreaterThan(10);
  for (const stage of told) expect(stageWords({ on: "pair", trial: false, stage }), stage).not.toBe(stage.charAt(0).toUpperCase() + stage.slice(1));
});
