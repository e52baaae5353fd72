import { expect, test } from "vitest";
import type { LastPair, Pair } from "#job/pair.ts";
import { pack, unpack } from "#app/worker-talk.ts";
import { samplePair } from "../support/sample-pair.ts";

/** The parts that matter here, and some of the rest. */
const onLast = (): LastPair => ({ ...samplePair(), from: "last", bottom: { mesh: "net" } }) as unknown as LastPair;

test("heavy parts go over once, and both sides end up with the same pair", () => {
  const first = onLast();
  const second: Pair = { ...first, labels: { ...first.labels, size: "EU 40" } };
  const parcel = pack(second, first);
  expect(parcel).not.toHaveProperty("last");
  expect(parcel).not.toHaveProperty("bottom");
  expect(unpack(parcel, first)).toEqual(second);
  // A last that was made anew goes over again.
  const third: Pair = { ...second, last: { ...first.last } };
  expect(pack(third, second)).toHaveProperty("last");
  expect(unpack(pack(third, second), second)).toEqual(third);
});

test("a comparison goes over once, goes with the second last, and is not missed where there is none", () => {
  const alone = onLast();
  const comparison = { verdict: "pair" } as unknown as NonNullable<LastPair["other"]>["comparison"];
  const held: Pair = { ...alone, other: { last: alone.last, comparison } };
  expect(unpack(pack(held, alone), alone)).toEqual(held);
  const again: Pair = { ...held, other: { last: alone.last, comparison } };
  expect(pack(again, held)).not.toHaveProperty("other");
  expect(unpack(pack(again, held), held)).toEqual(held);
  expect(unpack(pack(alone, held), held)).toEqual(alone);
});

test("a parcel that leaves out what was never sent is not taken for a pair", () => {
  const pair = onLast();
  expect(() => unpack(pack(pair, pair), undefined)).toThrow(/without what was sent before/);
});
