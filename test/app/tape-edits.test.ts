import { describe, expect, test } from "vitest";
import { followFound, setBar, setFaceDown, setMark, setMeasures, setOutline, setTapeSide, withoutPhoto, withPhotos } from "#app/state/tape-edits.ts";
import { setLines, setMeasure, setPiece } from "#app/state/edits.ts";
import { halfSizeOf, ruleFor } from "#app/state/measure-rule.ts";
import { defaultJob } from "#job/default-job.ts";
import { filesOf } from "#job/files.ts";
import { checkedJob } from "#job/job-file.ts";
import type { Job } from "#job/job.ts";
import { mostPhotos } from "#tape/said.ts";

const onTape = (): Job => withPhotos({ ...setPiece(setLines(defaultJob(), { throatDepthMm: 80 }), "backSeamMm", 2), sheets: { paper: "Letter" } }, ["inner.jpg", "outer.jpg"]);

describe("edits of a taped pattern", () => {
  test("leave the job they were given alone, and give one that the job file takes", () => {
    const job = setMark(onTape(), "throatMedial", { photo: "inner.jpg", at: [10, 20] });
    const before = JSON.stringify(job);
    for (const edited of [withPhotos(job, ["bottom.png"]), withoutPhoto(job, "inner.jpg"), setTapeSide(job, "left"), setFaceDown(job, true), setBar(job, 99.5), setMark(job, "backLateral", { photo: "outer.jpg", at: [1, 2] }), followFound(job, "throatMedial")]) {
      expect(edited).not.toEqual(job);
      expect(checkedJob("edited", JSON.parse(JSON.stringify(edited)))).toEqual(edited);
    }
    expect(JSON.stringify(job)).toBe(before);
  });

  test("a new one begins with the lines of the rules, the maker's paper, allowances and side, and a name that is not the example's", () => {
    expect(onTape()).toMatchObject({ title: "My taped pattern", size: "", lines: {}, sheets: { paper: "Letter" }, pieces: { backSeamMm: 2 }, last: { from: "tape", tape: { side: "right" } } });
    const left = withPhotos(setMeasure({ ...defaultJob(), title: "For Ada" }, "side", "left"), ["a.jpg"]);
    expect(left).toMatchObject({ title: "For Ada", size: "EU 38", last: { tape: { side: "left" } } });
  });

  test("further pictures join those there are, each once", () => {
    expect(filesOf(withPhotos(onTape(), ["bottom.jpg", "inner.jpg"]))).toEqual(["inner.jpg", "outer.jpg", "bottom.jpg"]);
    const many = withPhotos(onTape(), Array.from({ length: mostPhotos - 2 }, (_, i) => `${i}.jpg`));
    expect(checkedJob("many", many)).toEqual(many);
    expect(() => checkedJob("too many", withPhotos(many, ["one more.jpg"]))).toThrow(`at most ${mostPhotos} pictures`);
  });

  test("a picture goes with the marks that were placed in it, the last one stays", () => {
    const job = setMark(setMark(onTape(), "throatMedial", { photo: "inner.jpg", at: [1, 2] }), "throatLateral", { photo: "outer.jpg", at: [3, 4] });
    const without = withoutPhoto(job, "inner.jpg");
    expect(without.last).toEqual({ from: "tape", tape: { photos: ["outer.jpg"], side: "right", marks: { throatLateral: { photo: "outer.jpg", at: [3, 4] } } } });
    expect(withoutPhoto(without, "outer.jpg")).toBe(without);
  });

  test("as found again: the mark is forgotten, and no other; with the last of them the whole list", () => {
    const one = setMark(onTape(), "jointMedial", { photo: "inner.jpg", at: [1, 2] });
    const two = setMark(one, "seatMedial", { photo: "inner.jpg", at: [5, 6] });
    expect(followFound(two, "seatMedial")).toEqual(one);
    expect(followFound(one, "jointMedial")).toEqual(onTape());
    expect(followFound(one, "toeMedial")).toBe(one);
  });

  test("do nothing to a last that is not taped", () => {
    const job = defaultJob();
    expect(setMark(job, "toeMedial", { photo: "a", at: [0, 0] })).toBe(job);
    expect([setTapeSide(job, "left"), setFaceDown(job, true), setBar(job, 100)]).toEqual([job, job, job]);
  });
});

describe("drawings for a last made from measures", () => {
  test("are named, replaced and taken out; without any the job says nothing of them", () => {
    const job = defaultJob();
    const both = setOutline(setOutline(job, "bottom", "round.jpg"), "side", "profile.jpg");
    expect(filesOf(both)).toEqual(["round.jpg", "profile.jpg"]);
    expect(filesOf(setOutline(both, "side", "again.jpg"))).toEqual(["round.jpg", "again.jpg"]);
    expect(setBar(both, 99).last).toMatchObject({ outlines: { barMm: 99 } });
    expect(setOutline(setOutline(both, "side", undefined), "bottom", undefined)).toEqual(job);
    expect(setBar(setBar(both, 99), undefined)).toEqual(both);
    expect(setBar(setBar(onTape(), 199), undefined)).toEqual(onTape());
    expect(checkedJob("both", setBar(both, 99))).toEqual(setBar(both, 99));
    expect(setOutline(onTape(), "side", "a.jpg")).toEqual(onTape());
  });
});

describe("measures from the size", () => {
  const demo = defaultJob().last;
  const measures = demo.from === "measures" ? demo.measures : undefined!;

  test("the rule for one measure follows from the others, and there is none for the one that tells the size", () => {
    // Paris points: 253.3 mm is EU 38. Instep 10 mm over the joint (handbook of the trade, section 1.3).
    expect(halfSizeOf(measures)).toBe(38);
    expect(ruleFor("instepGirthMm", { ...measures, jointGirthMm: 226 })).toBe(236);
    expect(ruleFor("stickLengthMm", measures)).toBeUndefined();
    expect(ruleFor("seatWidthMm", { ...measures, stickLengthMm: 900 })).toBeUndefined();
  });

  test("all are set at once, the drawings stay", () => {
    const job = setOutline(defaultJob(), "side", "profile.jpg");
    const set = setMeasures(job, { ...measures, jointGirthMm: 225 }, "EU 36");
    expect(set.last).toMatchObject({ measures: { jointGirthMm: 225 }, outlines: { side: "profile.jpg" } });
    expect(set.size).toBe("EU 36");
    expect(setMeasures(onTape(), measures, "EU 36")).toEqual(onTape());
  });
});
