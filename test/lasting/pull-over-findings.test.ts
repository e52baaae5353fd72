import { expect, test } from "vitest";
import { explain, severityOf } from "#base/findings.ts";
import type { Point3 } from "#last/last.ts";
import { judgeLasted, told, type ToJudge } from "#lasting/judge-lasted.ts";
import type { DraftEnd, Ends } from "#lasting/lasted.ts";
import { exampleTable } from "../support/ready-to-pull.ts";

const { last } = exampleTable();
const asked: Ends = { throatDepthMm: 72, backHeightMm: 55, sideMm: { medial: [46, 41, 42], lateral: [45, 38, 39] }, lowestMm: { medial: 40.5, lateral: 37 } };
const at: Point3 = [240, 8, 20];
const draft = (number: number, name: string, change: Partial<DraftEnd> = {}): DraftEnd => ({ number, name, at, alongMm: 0, pullN: 20, heldN: 15, word: "firm", overMm: 1, marginMm: 18, ...change });
const quiet: ToJudge = {
  last,
  fabric: { grainLimit: 0.2, breakLimit: 0.45, tapeN: 600 },
  ends: asked,
  asked,
  asideMm: 0.2,
  drafts: [draft(1, "toe centre"), draft(7, "joint, inside", { half: "medial" }), draft(8, "joint, outside", { half: "lateral" })],
  loose: [],
  pleats: [],
  stretched: [],
  reached: { settled: true, steps: 100, moveMm: 0, residualN: 0 },
  tornAt: () => at,
};
const said = (change: Partial<ToJudge>): readonly string[] => judgeLasted({ ...quiet, ...change }).map(explain);

test("an upper that ends as asked is left in peace, and so is one just inside what is let pass", () => {
  expect(said({})).toEqual([]);
  const just = (by: number): Ends => ({ ...asked, throatDepthMm: 72 + by * told.throatMm, backHeightMm: 55 - by * told.backMm, lowestMm: { medial: 40.5 + by * told.sideMm, lateral: 37 - by * told.sideMm } });
  expect(said({ ends: just(0.99) })).toEqual([]);
  expect(said({ ends: just(1.01) }).length).toBe(4);
});

test("each end says by how much it is off, which way, and which draft answers", () => {
  expect(said({ ends: { ...asked, throatDepthMm: 69.5 } })).toEqual(["Pulled over, the throat ends 2.5 mm nearer to the toe than asked. Ease draft 1, take a firmer tape for the topline, turn the upper so that it gives least lengthwise, or cut from the corrected pattern."]);
  expect(said({ ends: { ...asked, throatDepthMm: 69.5 }, fabric: { ...quiet.fabric, tapeN: 0 } })[0]).toContain("tape the topline");
  expect(said({ ends: { ...asked, throatDepthMm: 74 } })[0]).toContain("2.0 mm farther from the toe than asked");
  expect(said({ ends: { ...asked, backHeightMm: 53 }, drafts: [draft(4, "back", { pullN: 3 })] })[0]).toMatch(/back stands 2\.0 mm lower .* cut the back higher/);
  expect(said({ ends: { ...asked, backHeightMm: 53 }, drafts: [draft(4, "back")] })[0]).toMatch(/back stands 2\.0 mm lower .* Ease draft 4/);
  expect(said({ ends: { ...asked, backHeightMm: 57 } })[0]).toMatch(/back stands 2\.0 mm higher .* Pull draft 4/);
  expect(said({ ends: { ...asked, lowestMm: { medial: 38, lateral: 39 } } }).map((s) => s.split(". ")[0])).toEqual(["Pulled over, the inner side stands 2.5 mm lower than asked", "Pulled over, the outer side stands 2.0 mm higher than asked"]);
});

test("a side that is low is eased where it was pulled, and cut higher where the drafts stop at their marks already", () => {
  const low = { ends: { ...asked, lowestMm: { medial: 38, lateral: 37 } } };
  const pulled = (pullN: number) => [draft(5, "seat side, inside", { half: "medial", pullN: 3 }), draft(9, "waist, inside", { half: "medial", pullN })];
  expect(said({ ...low, drafts: pulled(3) })).toEqual(["Pulled over, the inner side stands 2.5 mm lower than asked. Seat side and waist are pulled no farther than just tight already: cut from the corrected pattern, which is higher there, or ease the joint."]);
  expect(said({ ...low, drafts: pulled(15) })[0]).toContain("Ease the drafts at seat side, joint and waist on that side");
});

test("a draft that keeps short of its mark is told with its pull, from half a millimetre on", () => {
  const short = (shortMm: number) => said({ drafts: [draft(4, "back", { pullN: 25, shortMm })] });
  expect(short(0.4)).toEqual([]);
  expect(short(1.2)).toEqual(["Draft 4, back, keeps short of its mark: pulled with 25 N, the topline still stands 1.2 mm above it. Cut the upper lower there, cut from the corrected pattern, or pull harder if the leather bears it."]);
});

test("a flank over the hollow of the waist is a note and says why", () => {
  const loose = [{ kind: "stands off", half: "lateral", fromBackMm: 95, at, by: 5.9, spans: true }] as const;
  expect(said({ loose })).toEqual(["Pulled over, the taut topline spans the hollow of the waist on the outer half, as card does: it stands 5.9 mm off the last, 95 mm along it from the back seam. A foot fills it out. If you want it to lie on the last, shorten the topline less."]);
  expect(judgeLasted({ ...quiet, loose }).map(severityOf)).toEqual(["note"]);
});

test("a throat off the centre line and a pair of drafts out of balance are told with their side", () => {
  expect(said({ asideMm: 1.4 })[0]).toMatch(/1\.4 mm off the centre line toward the inner side/);
  expect(said({ asideMm: -1.4 })[0]).toMatch(/toward the outer side/);
  const uneven = quiet.drafts.map((d) => (d.number === 8 ? { ...d, heldN: 5 } : d));
  expect(said({ drafts: uneven })[0]).toBe("Drafts 7 and 8, joint, are out of balance at the end: 15 N hold on the inner side, 5 N on the outer one. Look again whether the throat stands on the centre line before you go on.");
  expect(said({ drafts: quiet.drafts.map((d) => ({ ...d, heldN: d.number === 8 ? 1 : 4 })) })).toEqual([]);
});

test("flanks, grain, pleats and margins say where, by how much and what to do", () => {
  expect(said({ loose: [{ kind: "stands off", half: "medial", fromBackMm: 119, at, by: 3.2 }] })[0]).toMatch(/3\.2 mm off the last on the inner half, 119 mm along it from the back seam\. Close the waist/);
  expect(said({ stretched: [{ kind: "grain", at, by: 0.23 }] })[0]).toMatch(/stretched by 23 % .* at the toe.*; above 20 % the grain/);
  expect(said({ pleats: [{ kind: "pleats", where: "toe", takenMm: 40, at, by: 0.2 }] })[0]).toMatch(/Round the toe pleats take up 40 mm/);
  expect(said({ pleats: [{ kind: "pleats", where: "toe", takenMm: 20, at, by: 0.2 }] })).toEqual([]);
  expect(said({ drafts: [draft(1, "toe centre", { marginMm: 7.2 })] })[0]).toBe("At draft 1, toe centre, only 7.2 mm of margin are left inside the feather line; pincers need 10 mm. Cut the lasting margin wider there.");
  expect(said({ drafts: [draft(1, "toe centre", { marginMm: -1 })] })[0]).toContain("no margin is left");
});

test("what was stopped half-way says why, and nothing of ends that mean nothing", () => {
  const off = { ends: { ...asked, throatDepthMm: 60 } }, reached = { ...quiet.reached, settled: false, moveMm: 0.31, residualN: 2.4 };
  expect(said({ ...off, reached: { ...reached, stopped: { stage: "draft 1, toe centre", what: "torn", vertex: 0, stretch: 1.5 } } })).toEqual([expect.stringMatching(/^The upper tears at draft 1, toe centre, .*: it is stretched by 50 % there, and this leather bears 45 %/)]);
  expect(said({ ...off, reached: { ...reached, stopped: { stage: "laid on", what: "astray" } } })).toEqual([expect.stringMatching(/^The upper slides off the last while it is laid on/)]);
  const restless = judgeLasted({ ...quiet, ...off, reached: { ...reached, stopped: { stage: "at rest", what: "restless" } } });
  // At the end all stages are done: the ends are roughly known, and told too.
  expect(restless.map(({ code }) => code)).toEqual(["lasting-restless", "lasting-throat"]);
  expect(explain(restless[0]!)).toContain("it still moves by 0.31 mm, and 2.4 N are left over");
  expect(restless.map(severityOf)).toEqual(["look", "look"]);
});
