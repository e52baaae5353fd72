// A half-typed row belongs to its strip: not to the one that stands there next.
import { expect, test } from "vitest";
import { defaultJob } from "#job/default-job.ts";
import { addReading, addStrip, removeStrip, setStrip, stripsOf } from "#app/state/leather-edits.ts";
import { StripIds } from "#app/state/strip-ids.ts";

const three = (["along", "across", "bias"] as const).reduce((job, way) => addStrip(job, "upper", way), defaultJob());

test("names stay with strips through edits, taking out and undoing, and a new strip has a new one", () => {
  const ids = new StripIds(), of = (job: typeof three) => ids.of(stripsOf(job, "upper"));
  const [a, b, c] = of(three);
  expect(new Set([a, b, c]).size).toBe(3);
  const edited = setStrip(addReading(three, "upper", 1, { loadN: 5, lengthMm: 103 }), "upper", 1, { widthMm: 21 });
  expect(of(edited)).toEqual([a, b, c]);
  const without = removeStrip(edited, "upper", 0);
  expect(of(without)).toEqual([b, c]);
  expect(of(edited)).toEqual([a, b, c]);
  const gone = removeStrip(removeStrip(edited, "upper", 2), "upper", 1);
  expect(of(gone)).toEqual([a]);
  expect([a, b, c]).not.toContain(of(addStrip(gone, "upper", "across"))[1]);
});

test("the strips of another job are others, though they are as many", () => {
  const ids = new StripIds();
  const first = ids.of(stripsOf(three, "upper"));
  for (const name of ids.of(structuredClone(stripsOf(three, "upper")))) expect(first).not.toContain(name);
});
