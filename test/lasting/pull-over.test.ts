import { beforeAll, describe, expect, test } from "vitest";
import { Cancelled } from "#base/watch.ts";
import { explain } from "#base/findings.ts";
import { mirrorLast } from "#last/mirror.ts";
import type { Lasted } from "#lasting/lasted.ts";
import { mirroredLines, mirroredUpper } from "#lasting/mirrored.ts";
import { pullOver } from "#lasting/pull-over.ts";
import { readyToPull, type Asked } from "../support/ready-to-pull.ts";

const pulled = (asked: Asked = {}): Lasted => pullOver(readyToPull(asked));
const at = (values: Float64Array, share: number): number => values.slice().sort()[Math.floor(share * (values.length - 1))]!;

let usual: Lasted;
beforeAll(() => {
  usual = pullOver(readyToPull(), { frames: true });
});

test("the usual upper comes to rest, tacked all round, and nothing is left undone", () => {
  expect(usual.settled).toBe(true);
  expect(usual.moveMm).toBeLessThan(0.01);
  expect(usual.residualN).toBeLessThan(0.01);
  for (const values of [usual.positions, usual.most, usual.least, usual.along, usual.across, usual.standOff]) expect(values.every(Number.isFinite)).toBe(true);
  expect(usual.standOff.every((h) => h >= 0)).toBe(true);
  expect(usual.drafts.map(({ number }) => number)).toEqual([1, 2, 3, 4, 5, 6, 7, 8, 9, 10]);
  usual.most.forEach((most, t) => {
    for (const way of [usual.along[t]!, usual.across[t]!]) expect(way <= most + 1e-9 && way >= usual.least[t]! - 1e-9).toBe(true);
  });
});

// Common practice, no source: the upper moves 3 to 6 mm at the toe, 2 to 4 mm at the sides and 0 to 1 mm at the back; strains lengthwise
// 2 to 5 %, across the forepart 6 to 12 %, 15 to 25 % at the toe's corners. A factor of about two either way is let pass here.
describe("what happens is of the size that the trade knows", () => {
  test("from laid on to rest the toe's edge comes forward by millimetres, the back hardly moves", () => {
    const { over } = readyToPull().cut, laidOn = usual.frames.find(({ what }) => what === "laid on")!, way = (v: number) => Math.hypot(...[0, 1, 2].map((d) => usual.positions[3 * v + d]! - laidOn.positions[3 * v + d]!));
    const toe = over.edges.centre[0]!, back = over.edges.backMedial[over.edges.backMedial.length - 1]!;
    expect(way(toe)).toBeGreaterThan(1.5);
    expect(way(toe)).toBeLessThan(12);
    expect(way(back)).toBeLessThan(2);
  });
  test("strains", () => {
    expect(at(usual.along, 0.95) - 1).toBeGreaterThan(0.01);
    expect(at(usual.along, 0.95) - 1).toBeLessThan(0.08);
    expect(at(usual.across, 0.95) - 1).toBeGreaterThan(0.025);
    expect(at(usual.across, 0.95) - 1).toBeLessThan(0.15);
    expect(at(usual.most, 1) - 1).toBeLessThan(0.4);
  });
  test("ends come within a maker's reach of what is asked", () => {
    expect(Math.abs(usual.ends.throatDepthMm - usual.asked.throatDepthMm)).toBeLessThan(6);
    expect(Math.abs(usual.ends.backHeightMm - usual.asked.backHeightMm)).toBeLessThan(2);
    for (const half of ["medial", "lateral"] as const) expect(Math.abs(usual.ends.lowestMm[half] - usual.asked.lowestMm[half])).toBeLessThan(6);
  });
});

// What every maker knows (common practice, no source).
describe("the throat opens deeper", () => {
  const throat = (asked: Asked): number => pulled(asked).ends.throatDepthMm;
  test("in a leather that gives more", () => {
    const [nappa, calf] = [throat({ upper: "nappa" }), throat({ upper: "calf" })];
    expect(nappa).toBeLessThan(usual.ends.throatDepthMm - 0.2);
    expect(usual.ends.throatDepthMm).toBeLessThan(calf - 0.1);
  });
  test("in leather that is turned so that it gives most lengthwise", () => {
    expect(throat({ settings: { upperTurnDeg: 90, liningTurnDeg: 90 } })).toBeLessThan(usual.ends.throatDepthMm - 0.5);
  });
  test("without a tape, and less with a firmer one", () => {
    expect(throat({ settings: { tapeN: 0 } })).toBeLessThan(usual.ends.throatDepthMm - 1);
    expect(throat({ settings: { tapeN: 1500 } })).toBeGreaterThan(usual.ends.throatDepthMm + 0.5);
  });
  test("the harder the toe is pulled, and with chalk on the last", () => {
    expect(throat({ settings: { pullToeN: 140 } })).toBeLessThan(usual.ends.throatDepthMm - 0.5);
    expect(throat({ settings: { friction: 0.15 } })).toBeLessThan(usual.ends.throatDepthMm - 0.5);
  });
});

test("an upper in three panels ends where one in one piece does, to about a millimetre", () => {
  const { ends, settled } = pulled({ cut: "quarters" });
  expect(settled).toBe(true);
  expect(Math.abs(ends.throatDepthMm - usual.ends.throatDepthMm)).toBeLessThan(1.2);
  expect(Math.abs(ends.backHeightMm - usual.ends.backHeightMm)).toBeLessThan(1);
});

test("the left shoe is the mirror of the right one, and the same input gives the same bytes", () => {
  const right = readyToPull({ settings: { upperTurnDeg: 20 } }), { cut, last, lines } = right;
  const left = pullOver({ ...right, cut: mirroredUpper(cut), last: mirrorLast(last), lines: mirroredLines(lines) });
  const one = pullOver(right);
  expect(left.ends).toEqual(one.ends);
  left.positions.forEach((x, k) => expect(Math.abs(x - (k % 3 === 1 ? -1 : 1) * one.positions[k]!)).toBeLessThan(1e-6));
  expect(left.findings.map(explain)).toEqual(one.findings.map(explain));
  expect(left.along).toEqual(one.along);
  const again = pullOver(right);
  expect(again.positions).toEqual(one.positions);
});

test("pictures of it: laid on, every draft and a part of it, at rest", () => {
  expect(usual.frames.length).toBeLessThanOrEqual(40);
  expect(usual.frames[0]!.what).toMatch(/^laid on/);
  expect(usual.frames.at(-1)!.what).toBe("at rest");
  expect(usual.frames.map(({ what }) => what)).toContain("drafts 7 and 8, joints");
  for (const { positions } of usual.frames) expect(positions.length).toBe(usual.positions.length);
  expect(usual.frames.at(-1)!.positions).toEqual(Float32Array.from(usual.positions));
});

test("it tells where it is, and stops when it is told to", () => {
  const told: (readonly [string, number])[] = [];
  expect(() =>
    pullOver(readyToPull(), {
      watch: (stage, fraction) => {
        told.push([stage, fraction]);
        if (stage.startsWith("drafts 5")) throw new Cancelled();
      },
    }),
  ).toThrow(Cancelled);
  told.forEach(([, fraction], k) => expect(fraction >= (told[k - 1]?.[1] ?? 0) && fraction < 1).toBe(true));
  expect([...new Set(told.map(([stage]) => stage))].slice(0, 3)).toEqual(["laid on", "draft 1, toe centre", "drafts 2 and 3, toe corners"]);
});

describe("what cannot be ends with what was reached, and says so", () => {
  test("a leather that bears little tears: at which draft, where, by how much", () => {
    const input = readyToPull();
    const torn = pullOver({ ...input, fabric: { ...input.fabric, breakLimit: 0.055 } });
    expect(torn.settled).toBe(false);
    expect(torn.positions.every(Number.isFinite)).toBe(true);
    expect(torn.findings.map(({ code }) => code)).toEqual(["lasting-tears"]);
    expect(explain(torn.findings[0]!)).toMatch(/^The upper tears at drafts? \d.*: it is stretched by \d+ % there, and this leather bears 6 %/);
    expect(torn.findings[0]!.at!.every(Number.isFinite)).toBe(true);
  });
  test("without friction nothing holds an upper that is pulled at one place only", () => {
    const slid = pulled({ settings: { friction: 0, pullToeN: 200 } });
    expect(slid.positions.every(Number.isFinite)).toBe(true);
    if (!slid.settled) expect(slid.findings.map(explain).join(" ")).toMatch(/slides off the last|come to rest/);
  });
  test("strains beyond the grain's limit are told with their place", () => {
    const input = readyToPull();
    const cracked = pullOver({ ...input, fabric: { ...input.fabric, grainLimit: 0.04 } });
    const told = cracked.findings.filter(({ code }) => code === "lasting-grain");
    expect(told.length).toBe(1);
    expect(explain(told[0]!)).toMatch(/stretched by \d+ % .*; above 4 % the grain/);
    expect(cracked.troubles.some(({ kind }) => kind === "grain")).toBe(true);
  });
});
