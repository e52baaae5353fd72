// When a pull-over still holds, how the two stations stand in words, and the colours of a lasted upper.
import { expect, test } from "vitest";
import { finding } from "#base/findings.ts";
import { defaultJob } from "#job/default-job.ts";
import type { Lasted } from "#lasting/lasted.ts";
import { pullRules } from "#lasting/settings.ts";
import { lastedMap, outlineOf } from "#app/picture/lasted-map.ts";
import { leatherWords, lastingWords } from "#app/state/bench-words.ts";
import { addReading, addStrip, setLeather } from "#app/state/leather-edits.ts";
import { followLastingRule, isCutSo, setLasting, uncorrected } from "#app/state/lasting-edits.ts";
import { fieldOf } from "#app/state/measure-field.ts";
import { holdsFor, sameForLasting } from "#app/state/same-for-lasting.ts";
import { lookOf } from "#app/state/stations.ts";

const job = defaultJob();

test("a title, a paper or a shoe written down leaves the pull-over as it is; a pull, a leather or a line does not", () => {
  const log = [{ pair: 1, side: "left", last: "a", leather: "goat", measured: { backHeightMm: 54 } }] as const;
  for (const same of [{ ...job, title: "x" }, { ...job, sheets: { onePage: true } }, { ...job, log: [{ ...log[0], measured: {} }] }, structuredClone(job)]) expect(sameForLasting(job, same)).toBe(true);
  for (const other of [setLasting(job, { pullBackN: pullRules.pullBackN.value + 1 }), setLeather(job, "upper", { known: "calf" }), { ...job, lines: { throatDepthMm: 71 } }]) expect(sameForLasting(job, other)).toBe(false);
  expect(sameForLasting(undefined, job)).toBe(false);
  // A throat that had been foretold teaches how much the leather gives, so that another one is reckoned with.
  const taught = { ...job, log: [{ ...log[0], measured: { throatDepthMm: 70 }, foretold: { throatDepthMm: 71, perTenthMm: -0.6 } }] };
  expect(sameForLasting(job, taught)).toBe(false);
  expect(sameForLasting(taught, { ...taught, log: [{ ...taught.log[0]!, measured: { throatDepthMm: 70, backHeightMm: 54 } }] })).toBe(true);
});

test("what is written down of the newest pair leaves the picture it was foretold by as it is; the pair after it is another", () => {
  const shoe = (pair: number, side: "left" | "right", throatDepthMm = 70) => ({ pair, side, last: "a", leather: "goat", measured: { throatDepthMm }, foretold: { throatDepthMm: 71, perTenthMm: -0.6 } }) as const;
  const left = { ...job, log: [shoe(1, "left")] }, both = { ...job, log: [shoe(1, "left"), shoe(1, "right", 69)] }, next = { ...job, log: [...both.log, shoe(2, "left")] };
  for (const [pulled, now] of [[job, left], [job, both], [left, both], [both, next], [job, job]] as const) expect(holdsFor(pulled, now)).toBe(true);
  for (const [pulled, now] of [[job, next], [left, next], [undefined, job], [setLasting(job, { pullToeN: 7 }), left]] as const) expect(holdsFor(pulled, now)).toBe(false);
  expect(sameForLasting(job, left)).toBe(false);
});

test("a pull is shown in newtons, friction in percent, a turn in degrees", () => {
  expect([fieldOf(pullRules.pullToeN).unit, fieldOf(pullRules.friction).unit, fieldOf(pullRules.upperTurnDeg).unit]).toEqual(["N", "%", "°"]);
  const own = setLasting(job, { pullToeN: 7 });
  expect(own.lasting).toEqual({ pullToeN: 7 });
  expect(followLastingRule(own, "pullToeN").lasting).toEqual({});
});

test("a job that is cut from the corrected pattern is known by its four numbers, and is the same work but for them", () => {
  const shift = { throatShiftMm: 1.204, backShiftMm: 0, innerShiftMm: 2.8, outerShiftMm: -0.3 };
  const cut = setLasting(setLasting(job, { pullToeN: 90 }), { correct: true, ...shift, throatShiftMm: 1.2 });
  expect(isCutSo(cut, shift)).toBe(true);
  expect(isCutSo(setLasting(cut, { correct: false }), shift)).toBe(false);
  expect(isCutSo(setLasting(cut, { innerShiftMm: 2.5 }), shift)).toBe(false);
  expect(uncorrected(cut)).toEqual(setLasting(job, { pullToeN: 90 }));
});

test("what a pull-over came to is counted at Lasting, notes are not", () => {
  const found = [finding("lasting-throat", { byMm: -2, taped: true }), finding("lasting-pleats", { where: "toe", takenMm: 30, percent: 40, usualMm: 25 })];
  expect(lookOf("Lasting", found)).toBe("one thing to look at");
  expect(lookOf("Pieces", found)).toBeUndefined();
});

test("the stations tell leathers and pulls in words", () => {
  expect(leatherWords(job)).toBe("upper goat or kid; lining goat for linings");
  const read = addReading(addStrip(setLeather(job, "upper", { known: "calf" }), "upper", "along"), "upper", 0, { loadN: 5, lengthMm: 103 });
  expect(leatherWords(read)).toMatch(/^upper calf, tested;/);
  expect(leatherWords(setLeather(read, "upper", { name: " Rosa " }))).toMatch(/^upper Rosa, tested;/);
  expect(lastingWords(setLasting(job, { pullToeN: 10 }), "last")).toMatch(/^toe pulled light, 10 N/);
  expect(lastingWords(job, "tape")).toBe("needs a last");
});

/** Two triangles of a square, 10 mm on a side. */
const square = {
  triangles: Uint32Array.of(0, 1, 2, 0, 2, 3),
  positions: Float64Array.of(0, 0, 0, 10, 0, 0, 10, 10, 0, 0, 10, 0),
  most: Float64Array.of(1.08, 1.02),
  least: Float64Array.of(0.98, 0.9),
  along: Float64Array.of(1.01, 0.95),
  across: Float64Array.of(1.05, 1.01),
  standOff: Float64Array.of(0, 0.2, 1.4, 0),
} as unknown as Lasted;

test("each map names its own worst place, with the sign that it looks for", () => {
  const worst = (of: Parameters<typeof lastedMap>[1]) => lastedMap(square, of).worst;
  expect(worst("most").value).toBeCloseTo(0.08, 12);
  expect(worst("least").value).toBeCloseTo(-0.1, 12);
  expect(worst("along").value).toBeCloseTo(-0.05, 12);
  expect(worst("across").value).toBeCloseTo(0.05, 12);
  expect(worst("stands off")).toEqual({ value: 1.4, at: [10, 10, 0] });
});

test("the outline is made of the edges that belong to one triangle alone", () => {
  const edges = outlineOf(square).map((e) => [...e].map((v) => Math.round(v)));
  expect(edges).toHaveLength(4);
  expect(edges.some(([x0, y0, , x1, y1]) => x0 !== x1 && y0 !== y1)).toBe(false);
});
