// The steps of a pull-over as the maker goes through them, and the arrows of its pulls.
import { expect, test } from "vitest";
import type { Lasted } from "#lasting/lasted.ts";
import { pullArrow } from "#app/picture/pull-arrows.ts";
import { rimOf } from "#app/picture/lasted-map.ts";
import { pullSteps, stepWords } from "#app/state/pull-steps.ts";

const frame = (what: string, ...x: readonly number[]): Lasted["frames"][number] => ({ what, positions: Float32Array.from(x.flatMap((v) => [v, 0, 0])) });
const draft = (number: number, name: string, pullN: number, word: "light" | "firm" | "strong") => ({ number, name, pullN, word }) as Lasted["drafts"][number];
const drafts = [draft(1, "toe centre", 100, "strong"), draft(2, "toe corner, inside", 50, "strong"), draft(3, "toe corner, outside", 50, "strong")];
const frames = [
  frame("laid on, part of it", 0, 0), frame("laid on", 0, 3), frame("draft 1, toe centre, part of it", 0, 5), frame("draft 1, toe centre", 0, 5.01),
  frame("drafts 2 and 3, toe corners, part of it", 1, 5), frame("drafts 2 and 3, toe corners", 2, 5), frame("between the drafts", 2, 6), frame("at rest", 2, 6),
];

test("pictures that show nothing new are left out, no two steps are called alike, and it ends at rest", () => {
  const steps = pullSteps({ frames, drafts });
  expect(steps.map(({ frame, what, goesOn }) => [frame, what, goesOn])).toEqual([
    [1, "laid on", false], [3, "draft 1, toe centre", false], [4, "drafts 2 and 3, toe corners", true], [5, "drafts 2 and 3, toe corners", false], [6, "between the drafts", false], [7, "at rest", false],
  ]);
  const words = steps.map((s) => stepWords(s, drafts));
  expect(new Set(words).size).toBe(words.length);
  expect(words[1]).toBe("Draft 1, toe centre, drawn with 100 N (strong)");
  const short = drafts.map((d) => (d.number === 3 ? { ...d, pullN: 20, word: "firm" as const, shortMm: 1.24 } : d));
  expect(stepWords(steps[3]!, short)).toBe("Drafts 2 and 3, toe corners, drawn with 50 N (strong) and 20 N (firm); the topline keeps 1.2\u00a0mm above its mark");
  expect(words[2]).toBe("Drafts 2 and 3, toe corners, being drawn with 50 N (strong) each");
});

test("each step tells which drafts are drawn, which hold already, and what moves most", () => {
  const [laid, first, , corners, between] = pullSteps({ frames, drafts });
  expect(laid).toMatchObject({ drawn: [], holding: [], moved: undefined });
  expect(first).toMatchObject({ drawn: [1], holding: [] });
  expect(first!.moved!.mm).toBeCloseTo(2.01, 4);
  expect(corners).toMatchObject({ drawn: [2, 3], holding: [1] });
  expect(between).toMatchObject({ drawn: [], holding: [1, 2, 3] });
});

test("an arrow begins at the edge nearest to its draft, square to it and outward, longer for a harder pull", () => {
  const square = { triangles: Uint32Array.of(0, 1, 2, 0, 2, 3), positions: Float64Array.of(0, 0, 0, 10, 0, 0, 10, 10, 0, 0, 10, 0) };
  const arrow = pullArrow(square, rimOf(square), [5, -1, 0], 20)!;
  expect(arrow.at).toEqual([5, 0, 0]);
  expect(arrow.way.map((v) => Math.round(v * 1e9) / 1e9 + 0)).toEqual([0, -1, 0]);
  expect(pullArrow(square, rimOf(square), [5, -1, 0], 100)!.longMm).toBeGreaterThan(arrow.longMm);
});
