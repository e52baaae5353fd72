import { describe, expect, test } from "vitest";
import type { FindingCode } from "#base/findings.ts";
import { Refusal } from "#base/refusal.ts";
import type { Side } from "#last/last.ts";
import { edgeLength, edgePoint, type Edge } from "#pieces/net-upper.ts";
import { nearestOn } from "#plane/along.ts";
import type { Outline, Polyline } from "#plane/outline.ts";
import type { TapeSaid } from "#tape/said.ts";
import { tapedShell } from "#tape/from-traced.ts";
import type { TapedShell } from "#tape/taped-shell.ts";
import { demoTape } from "../support/demo-tape.ts";
import { laid, rough, slitAt } from "../support/taped-outlines.ts";
import { tracedPicture } from "../support/traced.ts";

// The truth is the pattern itself that was cut in two, slit, turned and laid out: what comes back must be it.

const { net, bottom, medial, lateral, lastLength, ballWidth, seatWidth } = demoTape();
const photo = "tape.jpg";
type Xy = readonly [number, number];

/** Halves and bottom as they lie in one picture: apart, each turned its own way; a left pattern is the mirror of the right one. */
function table(side: Side, { over = false, halves = [medial, lateral] as readonly [Outline, Outline], withBottom = true } = {}) {
  const left = side === "left";
  return [
    laid(halves[0], 37, [100, 420], left !== over),
    laid(halves[1], -120, [-50, 20], left !== over),
    ...(withBottom ? [laid(bottom.outline, 11, [400, 0], left)] : []),
  ];
}

const shellOf = (outlines: readonly Outline[], said: Partial<TapeSaid> = {}): TapedShell => tapedShell([tracedPicture(photo, outlines)], { photos: [photo], side: "right", ...said });
const codes = ({ findings }: TapedShell): readonly FindingCode[] => findings.map((f) => f.code);

/** Farthest that a line lies off an edge of the pattern. */
const off = ({ xy }: Polyline, { line, arc }: Edge): number => {
  let most = 0;
  for (let i = 0; i < xy.length; i += 2) most = Math.max(most, nearestOn(line, arc, xy[i]!, xy[i + 1]!).distance);
  return most;
};
const offAll = ({ medial: m, lateral: l }: TapedShell): number =>
  Math.max(off(m.feather, net.feather), off(l.feather, net.feather), off(m.topline, net.topline), off(l.topline, net.topline), off(m.back, net.backMedial), off(l.back, net.backLateral));

describe("a taped pattern", () => {
  for (const side of ["right", "left"] as const)
    for (const over of [false, true])
      test(`of a ${side} last, lying ${over ? "face down" : "face up"}, comes back as it was cut`, () => {
        const shell = shellOf(table(side, { over }), { side, ...(over ? { faceDown: true } : {}) });
        expect(offAll(shell)).toBeLessThan(0.1);
        expect(shell.medial.outline).toBe(0);
        expect(shell.lateral.outline).toBe(1);
        expect(codes(shell)).toEqual(expect.not.arrayContaining(["tape-halves-swapped", "tape-bottom-turned", "tape-backs-differ", "tape-throats-differ", "tape-centre-bows"]));
      });

  test("keeps the lengths of its edges", () => {
    const { medial: m, lateral: l } = shellOf(table("right"));
    expect(m.lengths.back).toBeCloseTo(edgeLength(net.backMedial), 1);
    expect(l.lengths.back).toBeCloseTo(edgeLength(net.backLateral), 1);
    expect(m.lengths.topline + l.lengths.topline).toBeCloseTo(edgeLength(net.topline), 0);
    expect(m.lengths.feather + l.lengths.feather).toBeCloseTo(edgeLength(net.feather), 0);
    expect(m.lengths.centre).toBeCloseTo(-edgePoint(net.topline, net.places.throat)[0], 0);
    expect(Math.abs(m.lengths.centreBow)).toBeLessThan(0.05);
    expect(m.slits).toEqual([]);
  });

  // A knife and a picture are off by a tenth or two, here at every half millimetre, independently of the next.
  test.each([
    { roughMm: 0.1, offMm: 0.3, openMm: 0.5 },
    { roughMm: 0.2, offMm: 0.6, openMm: 1 },
  ])("slit at the toe and cut $roughMm mm rough comes back within $offMm mm, its slits bridged and counted", ({ roughMm, offMm, openMm }) => {
    const shares = [0.72, 0.78, 0.84, 0.9, 0.95];
    const slit = (outline: Outline, half: "medial" | "lateral", open: number): Outline =>
      shares.reduce((o, share) => slitAt(o, edgePoint(net.feather, half === "lateral" ? share * net.places.toe : edgeLength(net.feather) - share * (edgeLength(net.feather) - net.places.toe)), open, 20), outline);
    const shell = shellOf(table("right", { halves: [rough(slit(medial, "medial", 1.1), roughMm, 3), rough(slit(lateral, "lateral", 0.8), roughMm, 5)] }));
    expect(shell.medial.slits).toHaveLength(5);
    expect(shell.lateral.slits).toHaveLength(5);
    expect(Math.abs(shell.medial.lengths.slitsOpen - 5.5)).toBeLessThan(openMm);
    expect(Math.abs(shell.lateral.lengths.slitsOpen - 4)).toBeLessThan(openMm);
    for (const { deepMm, along } of shell.medial.slits) {
      expect(Math.abs(deepMm - 20)).toBeLessThan(1);
      expect(along).toBeGreaterThan(200);
    }
    expect(offAll(shell)).toBeLessThan(offMm);
    expect(codes(shell)).toEqual(expect.arrayContaining([expect.stringMatching(/^tape-slits/)]));
  });

  test("slit too wide, or where it must not be, is told so", () => {
    const wide = slitAt(slitAt(medial, edgePoint(net.feather, net.places.toe + 40), 4, 22), edgePoint(net.feather, net.places.toe + 60), 4, 22);
    const astray = slitAt(lateral, edgePoint(net.topline, (net.places.throat + edgeLength(net.topline)) / 2), 3, 15);
    const shell = shellOf(table("right", { halves: [wide, astray] }));
    expect(codes(shell)).toEqual(expect.arrayContaining(["tape-slits-wide", "tape-slit-astray"]));
    expect(shell.lateral.slits[0]!.along).toBeUndefined();
    expect(shell.lateral.lengths.slitsOpen).toBe(0);
  });

  test("in two pictures is one pattern", () => {
    const [a, b, c] = table("right");
    const shell = tapedShell([tracedPicture("outer.jpg", [b!]), tracedPicture("inner.jpg", [a!]), tracedPicture("bottom.jpg", [c!])], { photos: ["outer.jpg", "inner.jpg", "bottom.jpg"], side: "right" });
    expect([shell.medial.photo, shell.lateral.photo, shell.bottom?.photo]).toEqual(["inner.jpg", "outer.jpg", "bottom.jpg"]);
    expect(offAll(shell)).toBeLessThan(0.1);
  });
});

describe("the bottom", () => {
  test("traced with the halves gives length and widths of the last, and its joints", () => {
    const shell = shellOf(table("right"));
    expect(shell.length.how).toBe("traced");
    expect(Math.abs(shell.bottom!.lengthMm - lastLength)).toBeLessThan(0.5);
    expect(Math.abs(shell.bottom!.ballWidthMm - ballWidth)).toBeLessThan(0.3);
    expect(Math.abs(shell.bottom!.seatWidthMm - seatWidth)).toBeLessThan(0.4);
    // Joint points on the flat upper, by the bottom: our own rule, said to be good to 2 mm.
    expect(Math.abs(shell.medial.jointAlong - (edgeLength(net.feather) - net.places.jointMedial))).toBeLessThan(2);
    expect(Math.abs(shell.lateral.jointAlong - net.places.jointLateral)).toBeLessThan(2);
    expect(shell.medial.points.joint.how).toBe("found");
  });

  test("not traced is said to be missing, and length and joints are estimated", () => {
    const shell = shellOf(table("right", { withBottom: false }));
    expect(shell.bottom).toBeUndefined();
    expect(shell.length.how).toBe("estimated");
    expect(Math.abs(shell.length.mm / lastLength - 1)).toBeLessThan(0.03);
    expect(Math.abs(shell.medial.jointAlong - (edgeLength(net.feather) - net.places.jointMedial))).toBeLessThan(6);
    expect(shell.medial.points.joint.how).toBe("estimated");
    expect(codes(shell)).toContain("tape-no-bottom");
  });

  test("that lies turned over is told and turned back by its waist", () => {
    const [a, b] = table("right");
    const shell = shellOf([a!, b!, laid(bottom.outline, 11, [400, 0], true)]);
    // Only a last whose inner waist is clearly hollower can tell; the example's is.
    expect(codes(shell)).toContain("tape-bottom-turned");
    expect(shell.bottom!.jointMedial[0]).toBeGreaterThan(shell.bottom!.jointLateral[0]);
  });
});

describe("what the maker marks", () => {
  test("goes before what is found", () => {
    const outlines = table("right");
    const found = shellOf(outlines);
    const moved = found.medial.points.throat.at;
    const place: Xy = [moved[0] + 1.5, moved[1] + 1];
    const shell = shellOf(outlines, { marks: { throatMedial: { photo, at: place } } });
    expect(shell.medial.points.throat).toEqual({ at: place, how: "said" });
    expect(shell.lateral.points.throat.how).toBe("found");
  });

  test("off every edge is not used, and told", () => {
    const shell = shellOf(table("right"), { marks: { toeMedial: { photo, at: [-400, -400] } } });
    expect(codes(shell)).toContain("tape-mark-off");
    expect(offAll(shell)).toBeLessThan(0.1);
  });

  test("on a smaller one of two bottoms takes that one; marks on the other are told", () => {
    const large: Outline = { xy: laid(bottom.outline, 11, [400, 0]).xy.map((v, i) => 1.04 * v + (i % 2 === 1 ? -500 : 0)) };
    const outlines = [...table("right"), large];
    const plain = shellOf(outlines);
    expect(plain.bottom?.outline).toBe(3);
    const ends = shellOf(table("right")).bottom!;
    const marks = { bottomToe: { photo, at: ends.points.toe.at }, bottomSeat: { photo, at: ends.points.seat.at } };
    const marked = shellOf(outlines, { marks });
    expect(marked.bottom?.outline).toBe(2);
    expect(marked.bottom?.points.toe.how).toBe("said");
    expect(codes(marked)).not.toContain("tape-mark-off");
    const both = shellOf(outlines, { marks: { ...marks, bottomJointMedial: { photo, at: plain.bottom!.points.jointMedial.at } } });
    expect(both.bottom?.outline).toBe(2);
    expect(codes(both)).toContain("tape-mark-off");
  });

  test.each([["toeMedial", "backLateral"], ["toeMedial", "toeLateral"], ["toeMedial", "jointLateral"], ["throatMedial", "bottomToe"]] as const)("%s and %s on one piece are refused by name", (one, two) => {
    const outlines = table("right");
    const { toe, throat, back } = shellOf(outlines).medial.points;
    const at = (mark: string): Xy => (mark.startsWith("toe") ? toe.at : mark.startsWith("throat") ? throat.at : back.at);
    const marks = { [one]: { photo, at: at(one) }, [two]: { photo, at: one.slice(0, 3) === two.slice(0, 3) ? throat.at : at(two) } };
    try {
      shellOf(outlines, { marks });
      expect.unreachable();
    } catch (error) {
      expect(error).toBeInstanceOf(Refusal);
      expect((error as Refusal).finding.code).toBe("tape-marks-contradict");
      expect((error as Refusal).message).toMatch(/(toe|throat), inner side.*(outer side|of the bottom)/);
    }
  });

  test("a joint of the other half is not taken, and does not turn what the shapes tell", () => {
    const outlines = table("right");
    const found = shellOf(outlines);
    const shell = shellOf(outlines, { marks: { jointLateral: { photo, at: found.medial.points.joint.at } } });
    expect([shell.medial.outline, shell.lateral.outline]).toEqual([0, 1]);
    expect(shell.lateral.points.joint).toEqual(found.lateral.points.joint);
    expect(codes(shell)).toContain("tape-mark-off");
    expect(codes(shell)).not.toContain("tape-half-turned");
  });

  test("names the halves where one of them lies turned over", () => {
    const [a, b, c] = [laid(medial, 37, [100, 420]), laid(lateral, -120, [-50, 20], true), laid(bottom.outline, 11, [400, 0])];
    expect(() => shellOf([a, b, c])).toThrow(Refusal);
    const toe = { photo, at: [100, 420] as Xy };
    const shell = shellOf([a, b, c], { marks: { toeMedial: toe } });
    expect(codes(shell)).toContain("tape-half-turned");
    expect(offAll(shell)).toBeLessThan(0.3);
  });
});

describe("what cannot be a taped pattern", () => {
  const refusedWith = (outlines: readonly Outline[]): FindingCode | undefined => {
    try {
      shellOf(outlines);
      return undefined;
    } catch (error) {
      return error instanceof Refusal ? error.finding.code : undefined;
    }
  };
  const sheet: Outline = { xy: Float64Array.of(0, 0, 297, 0, 297, 210, 0, 210) };

  test("is refused with what is missing", () => {
    expect(refusedWith([])).toBe("tape-halves-missing");
    expect(refusedWith([sheet])).toBe("tape-halves-missing");
    expect(refusedWith([table("right")[0]!])).toBe("tape-halves-missing");
    const [a, b] = table("right");
    expect(refusedWith([a!, b!, laid(medial, 80, [700, 0])])).toBe("tape-halves-many");
    expect(refusedWith([a!, laid(medial, 80, [700, 0])])).toBe("tape-halves-same");
  });

  test("a sheet of paper in the picture is neither half nor bottom", () => {
    const shell = shellOf([sheet, ...table("right", { withBottom: false })]);
    expect(shell.bottom).toBeUndefined();
    expect(offAll(shell)).toBeLessThan(0.1);
  });

  test("a pattern said to be of the other foot is told by its sides", () => {
    expect(codes(shellOf(table("right"), { side: "left" }))).toContain("tape-halves-swapped");
  });

  test("halves that do not fit are told where and by how much", () => {
    const longer: Outline = { xy: medial.xy.map((v) => 1.03 * v) };
    const shell = shellOf(table("right", { halves: [longer, lateral] }));
    expect(codes(shell)).toEqual(expect.arrayContaining(["tape-throats-differ", "tape-backs-differ"]));
    expect(shell.medial.lengths.back - shell.lateral.lengths.back).toBeCloseTo(0.03 * edgeLength(net.backMedial), 1);
  });
});
