// The numbers in the plan are the pair's own: a setting changed is a text changed, and what is read back is what was set.
import { describe, expect, test } from "vitest";
import { needsOf } from "#making/needs/needs.ts";
import { threadFor } from "#making/thread/thread.ts";
import { nailedLifts } from "#making/needs/nailed-lifts.ts";
import { factsOf } from "#making/steps/facts.ts";
import { tackPlaces } from "#making/steps/insole-tacks.ts";
import type { MakingSaid } from "#making/said.ts";
import { draftOrder } from "#pieces/draft-order.ts";
import type { PieceSettings } from "#pieces/settings.ts";
import { planned, planOf, textOf, type PlannedName } from "../support/plans.ts";

const numbersIn = (text: string): readonly number[] => [...text.matchAll(/\d+(?:\.\d+)?/gu)].map(([digits]) => Number(digits));
/** A number that stands nowhere in the plan. */
const odd = 7.35;

/** Where each setting is told, in the plan of which pair. */
const toldIn: Readonly<Partial<Record<keyof PieceSettings, readonly [PlannedName, string]>>> = {
  lastingToeMm: ["usual", "cut-upper"], lastingToeSidesMm: ["usual", "last-toes"], lastingForepartMm: ["usual", "check-drafts"], lastingOuterWaistMm: ["usual", "last-sides"], lastingInnerWaistMm: ["usual", "last-sides"],
  lastingHeelMm: ["usual", "check-drafts"], toplineFoldMm: ["usual", "fold-topline"], toplineBagMm: ["bagged", "bag-topline"], backSeamMm: ["usual", "sew-back-seam"], seamMm: ["wrapped", "sew-side-seams"],
  lapUnderMm: ["added", "sew-side-seams"], lapFoldMm: ["notch", "sew-side-seams"], dogTailLongMm: ["tail", "sew-dog-tail"], dogTailWideMm: ["tail", "sew-dog-tail"], stitchInMm: ["usual", "stitch-topline"],
  upperThicknessMm: ["usual", "look-over-leather"], skiveLapMm: ["added", "skive-upper"], skiveRawMm: ["added", "skive-upper"], skiveSeamMm: ["usual", "skive-upper"], skiveToeMm: ["usual", "skive-upper"],
  bindingThickMm: ["added", "bind-topline"], liningThicknessMm: ["usual", "look-over-leather"], liningTrimMm: ["usual", "trim-lining"], liningLastingShorterMm: ["usual", "check-drafts"], liningLapMm: ["usual", "join-lining"],
  puffLastingMm: ["usual", "set-puffs"], sideLiningMm: ["added", "cut-stiffening"], sideLiningBelowMm: ["added", "set-stiffeners"], insoleInMm: ["usual", "glue-boards"], firstBoardMm: ["usual", "cut-bottom"],
  secondBoardMm: ["usual", "cut-bottom"], secondBehindMm: ["usual", "prime-boards"], secondSkiveMm: ["usual", "prime-boards"], shankMm: ["taped, no bottom", "prime-boards"], shankWideMm: ["usual", "prime-boards"],
  shankThickMm: ["usual", "prime-boards"], shankFrontMm: ["taped, no bottom", "prime-boards"], shankRearMm: ["taped, no bottom", "prime-boards"], marginLeftMm: ["usual", "rough-bottoms"], stiffLeftMm: ["usual", "cut-stiffening"],
  toePuffMm: ["usual", "set-puffs"], soleMm: ["usual", "cut-bottom"], soleFinishForepartMm: ["usual", "lay-soles"], soleFinishWaistMm: ["usual", "lay-soles"], soleFinishHeelMm: ["usual", "lay-soles"],
  splitLiftMm: ["usual", "prime-heels"], splitLiftWideMm: ["usual", "prime-heels"], liftMm: ["taped", "build-heels"], topPieceMm: ["taped", "build-heels"], heelOverMm: ["usual", "level-heels"], heelTaperMm: ["usual", "build-heels"],
  breastHollowMm: ["usual", "level-heels"], sockInMm: ["usual", "lay-socks"], sockBehindMm: ["inner", "lay-socks"], sockBeyondMm: ["added", "lay-socks"], strapWidthMm: ["added", "make-strap"], strapFoldMm: ["added", "make-strap"],
  strapUnderMm: ["added", "make-strap"], strapOverMm: ["added", "close-straps"], goreWideMm: ["inner", "fit-gore"], goreDeepMm: ["inner", "fit-gore"], goreLapMm: ["inner", "fit-gore"], bowLongMm: ["added", "make-bow"],
  bowWideMm: ["added", "make-bow"], knotWideMm: ["added", "make-bow"], backStripTopMm: ["added", "sew-back-strip"], backStripFeatherMm: ["added", "sew-back-strip"], backStripFoldMm: ["added", "sew-back-strip"],
  toeCapMm: ["added", "sew-toe-cap"], toeCapFoldMm: ["added", "sew-toe-cap"],
};

/** Told otherwise: as what was cut from them (a strip's width, a layer's thickness), or as a sum. */
const toldByPieces: readonly (keyof PieceSettings)[] = ["foldTapeMm", "seamTapeMm", "stripEndsMm", "bindingBoundMm", "bindingWrappedMm", "flankTapeMm", "skiveFoldMoreMm"];
/** Decide the form of a piece alone: seen on its card, nothing to be measured at the bench. */
const onTheCard: readonly (keyof PieceSettings)[] = [
  "innerSeamBeforeBreastMm", "sideSeamBehindThroatMm", "sideSeamSlantMm", "seamClearOfJointMm", "liningBackInTopMm", "liningBackInMiddleMm", "liningBackInFeatherMm", "liningToeInMm", "liningJointMm", "liningJointBehindBallMm",
  "liningClearMm", "liningPocketTopMm", "liningPocketWingMm", "puffRoundMm", "counterLastingMm", "counterRakeMm", "counterRoundMm", "sideLiningHeightMm", "sideLiningLapMm", "flankTapeReachMm", "sockRoundMm",
  "strapBehindThroatMm", "toeCapBowMm",
];

describe("settings", () => {
  test.each(Object.entries(toldIn) as [keyof PieceSettings, readonly [PlannedName, string]][])("%s is told as it is set", (key, [name, id]) => {
    const { input, step } = planned(name);
    const told = (value: number): readonly number[] => numbersIn(planOf({ ...input, settings: { ...input.settings, [key]: value } }).step(id).todo.concat(step(id).fails).join(" "));
    expect(told(odd)).toContain(odd);
    expect(told(odd + 1)).toContain(odd + 1);
    expect(numbersIn(step(id).todo.join(" "))).not.toContain(odd);
  });

  test("no setting is forgotten: each is told, told by its pieces, or seen on the card alone", () => {
    const all = Object.keys(planned("usual").input.settings);
    expect([...Object.keys(toldIn), ...toldByPieces, ...onTheCard].sort()).toEqual([...all].sort());
  });

  test("what is cut off a roll is told by the strips themselves", () => {
    for (const [name, id, strip] of [["usual", "tape-topline", "fold tape"], ["usual", "tape-topline", "flank tape"], ["usual", "tape-seams", "seam tape"], ["added", "join-lining", "seam tape of the lining"], ["added", "cut-upper", "topline binding"]] as const) {
      const { input, step } = planned(name);
      const cut = input.strips.find((one) => one.name === strip)!;
      expect(numbersIn(step(id).todo.join(" ")), strip).toEqual(expect.arrayContaining([cut.widthMm, Math.ceil(cut.lengthMm)]));
    }
  });

  test("skive of a fold: twice the fold and what is set beyond it", () => {
    const { input, step } = planned("usual");
    const { toplineFoldMm, skiveFoldMoreMm } = input.settings;
    expect(numbersIn(step("skive-upper").todo.join(" "))).toEqual(expect.arrayContaining([2 * toplineFoldMm + skiveFoldMoreMm, toplineFoldMm]));
  });

  test.each(["counterMm", "counterBelowMm", "skiveMm", "skiveFeatherMm"] as const)("%s of the stiffening is told as it is set", (key) => {
    const { input } = planned("usual");
    const text = planOf({ ...input, stiff: { ...input.stiff, [key]: odd } }).steps.map(textOf).join(" ");
    expect(numbersIn(text)).toContain(odd);
  });
});

describe("numbers of the pair", () => {
  test("throat, back and lowest places are the same at marking, at the drafts and at the end", () => {
    const { input } = planned("usual");
    const ends = { throatDepthMm: 71.25, backHeightMm: 56.75, innerHeightMm: 41.85, outerHeightMm: 38.15 };
    const { step } = planOf({ ...input, ends });
    const shown = Object.values(ends).map((value) => Number(value.toFixed(1)));
    for (const id of ["mark-lasts", "check-drafts", "measure-pair"]) expect(numbersIn(step(id).todo.join(" ")), id).toEqual(expect.arrayContaining(shown));
    expect(numbersIn(step("draft-uppers").todo.join(" "))).toContain(shown[1]);
  });

  test("pieces are counted as they were cut", () => {
    for (const name of ["usual", "added", "inner"] as const) {
      const { input, step } = planned(name);
      for (const [material, id] of [["upper leather", "cut-upper"], ["lining leather", "cut-lining"]] as const) {
        const pieces = input.pieces.filter((piece) => piece.material === material);
        const text = step(id).todo.join(" ");
        expect(text).toContain(`${pieces.reduce((sum, { perPair }) => sum + perPair, 0)} pieces for the pair`);
        for (const piece of pieces) expect(text).toContain(piece.name);
      }
    }
  });

  test("the heel's layers are those that were made, and add up", () => {
    const { input, step } = planned("usual");
    const heel = input.made!.heel!;
    const text = step("build-heels").todo.join(" ");
    for (const { name } of heel.layers) expect(text).toContain(name);
    const shown = (mm: number): number => Number(mm.toFixed(1));
    expect(numbersIn(text)).toEqual(expect.arrayContaining([...heel.layers.flatMap(({ backMm, breastMm }) => [shown(backMm), shown(breastMm)]), shown(heel.backMm), shown(heel.breastMm)]));
    expect(heel.layers.reduce((sum, { backMm }) => sum + backMm, 0)).toBeCloseTo(heel.backMm, 9);
  });

  test("a higher heel has more layers in the text, and the longer nails that the list of needs buys", () => {
    const { input } = planned("usual");
    const layers = [{ name: "lift 1", backMm: 3.2, breastMm: 2.4 }, { name: "lift 2", backMm: 5, breastMm: 5 }, { name: "top piece", backMm: 5.5, breastMm: 5.5 }];
    const high = { ...input, pieces: [...input.pieces, ...input.pieces.filter(({ name }) => name === "lift 1").map((piece) => ({ ...piece, name: "lift 2" }))], made: { ...input.made!, heel: { ...input.made!.heel!, backMm: 13.7, breastMm: 12.9, layers } } };
    const text = planOf(high).step("build-heels").todo.join(" ");
    expect(text).toContain("lift 1: 3.2 mm at the back and 2.4 mm at the breast; lift 2: 5 mm; top piece: 5.5 mm");
    for (const one of [input, high]) {
      const nails = needsOf(one, threadFor(one.stitching)).needs.find(({ good }) => good === "heel nails")!;
      const lifts = nailedLifts(factsOf(one).cut, one);
      expect(lifts.map(({ name, nailMm }) => `${name}, ${nailMm} mm`)).toEqual(nails.parts.map(({ name }) => name));
      expect(2 * lifts.reduce((sum, { count }) => sum + count, 0)).toBe(nails.net);
      for (const { count, nailMm, name } of lifts) expect(planOf(one).step("build-heels").todo.join(" ")).toContain(`${count} of ${nailMm} mm in ${name}`);
    }
  });

  test("tacks of insole and drafts and nails of the margin are as many as the list of needs buys", () => {
    const { input, step } = planned("usual");
    const count = (good: string): number => needsOf(input, threadFor(input.stitching)).needs.find((need) => need.good === good)!.net;
    expect(numbersIn(step("tack-insoles").todo.join(" "))).toEqual(expect.arrayContaining([count("insole tacks"), count("insole tacks") / 2]));
    expect(numbersIn(step("open-margins").todo[1]!)).toContain(count("lasting tacks") / 2);
    expect(numbersIn(step("last-toes").todo[0]!)).toContain(count("lasting tacks") / 2);
    // The eight that place the upper, and one at each waist.
    expect(numbersIn(step("draft-uppers").todo.at(-1)!)[0]! + 2).toBe(draftOrder.length);
    const nails = numbersIn(step("last-sides").todo.at(-1)!)[0]!;
    expect(nails).toBe(count("lasting nails") / 2);
  });

  test("the insole's tacks stand clear of the steel shank: behind its heel end and ahead of its front end, seen from the insole's back edge", () => {
    const { input } = planned("usual");
    const usual = tackPlaces(input)!;
    expect(numbersIn(planned("usual").step("tack-insoles").todo[1]!)).toEqual([3, usual.seatMm, usual.middleMm, 40]);
    for (const fromSeatMm of [9, 16, 22, 31.2, 60]) for (const lengthMm of [90, 102.5, 120]) {
      const made = { ...input.made!, shank: { ...input.made!.shank, fromSeatMm, lengthMm } };
      const { seatMm, middleMm } = tackPlaces({ ...input, made })!;
      if (seatMm === undefined) expect(planOf({ ...input, made }).step("tack-insoles").todo[1]).toMatch(/Seat: beside the shank, 11\.5 mm or more from its line/u);
      else {
        expect(seatMm).toBeLessThan(fromSeatMm - 5);
        expect(seatMm).toBeGreaterThanOrEqual(8);
      }
      expect(middleMm).toBeGreaterThanOrEqual(fromSeatMm + lengthMm + 5);
    }
    expect(planned("taped, no bottom").step("tack-insoles").todo[1]).toMatch(/5 mm or more behind the shank's square end/u);
  });

  test("over the lasted upper the tape reads more than on the bare last: both are told, to the half millimetre of the log, at the drafts and at the end", () => {
    const { input } = planned("usual");
    const ends = { throatDepthMm: 72, backHeightMm: 55, innerHeightMm: 40.5, outerHeightMm: 37, over: { throatMm: 3.87, backMm: 2.05, lowestMm: { medial: 0.65, lateral: 1.1 } } };
    const { step } = planOf({ ...input, ends });
    for (const id of ["check-drafts", "measure-pair"]) {
      expect(step(id).todo.join(" "), id).toContain("throat 76 mm, back 57 mm, lowest places 41 mm inside and 38 mm outside");
      expect(step(id).todo.join(" "), id).toContain("throat 72 mm, back 55 mm, lowest places 40.5 mm inside and 37 mm outside");
    }
    expect(step("mark-lasts").todo.join(" ")).not.toMatch(/\b(76|57)\b/u);
    expect(planned("taped").step("measure-pair").todo.join(" ")).toMatch(/over leather the tape reads a little more/u);
  });

  test("the heel's height is one and the same wherever it is told", () => {
    const { input, step } = planned("usual");
    const { backMm, breastMm } = input.made!.heel!;
    for (const id of ["build-heels", "level-heels", "measure-pair"]) expect(step(id).todo.join(" "), id).toMatch(new RegExp(`${Number(backMm.toFixed(1))} mm (?:together )?at the back and ${Number(breastMm.toFixed(1))} mm at the breast`, "u"));
  });

  test("with fewer pairs of lasts than pairs of shoes the steps speak of rounds, else not", () => {
    const { input } = planned("usual");
    const todo = (said: MakingSaid, id: string): string => planOf({ ...input, said }).step(id).todo.join(" ");
    expect(todo({ pairs: 3, lasts: 2 }, "block-boards")).toContain("With 2 pairs of lasts for 3 pairs of shoes");
    expect(todo({ pairs: 3, lasts: 2 }, "slip-lasts")).toMatch(/free for the next round/u);
    expect(todo({ pairs: 3, lasts: 2 }, "mark-lasts")).toMatch(/2 pairs of lasts/u);
    expect(todo({ pairs: 3, lasts: 3 }, "block-boards")).not.toMatch(/rounds/u);
    for (const id of ["block-boards", "slip-lasts", "mark-lasts"]) expect(todo({}, id)).not.toMatch(/rounds?\b|pairs of lasts/u);
    expect(todo({ pairs: 3 }, "cut-upper")).toContain("which of the 3 pairs");
  });

  test("stitches to the centimetre, thread and needle are those that thread was reckoned with", () => {
    const { input, step } = planned("added");
    const thread = threadFor(input.stitching);
    for (const [seam, id] of [["back seam", "sew-back-seam"], ["topline", "stitch-topline"], ["topline binding", "bind-topline"], ["outer side seam", "sew-side-seams"], ["lining back seam", "join-lining"], ["toe cap", "sew-toe-cap"], ["back strip", "sew-back-strip"], ["strap edge", "make-strap"]] as const) {
      expect(step(id).todo.join(" "), seam).toContain(`${thread.seams.find(({ name }) => name === seam)!.stitchesPerCm} stitches to the centimetre`);
    }
    expect(step("stitch-topline").todo.join(" ")).toContain(`thread ${thread.ticket}, needle ${thread.needle.nm} (${thread.needle.us})`);
    expect(numbersIn(step("stitch-topline").todo[0]!)).toContain(Number(input.stitching.find(({ name }) => name === "topline")!.stackMm.toFixed(1)));
  });
});
