// What a toe cap, a back strip and side linings add to the bottom, and what insole, sock and heel are told of.
import { describe, expect, test } from "vitest";
import { Refusal } from "#base/refusal.ts";
import { unwatched } from "#base/watch.ts";
import { lastFromMeasures } from "#last/from-measures.ts";
import type { Last } from "#last/last.ts";
import { completeMeasures } from "#last/measures-by-size.ts";
import { toeShapes } from "#last/measured.ts";
import { bottomPieces } from "#pieces/bottom/bottom-pieces.ts";
import { checkDrawn } from "#pieces/bottom/check-bottom.ts";
import { marginUnder, type LastedExtras } from "#pieces/bottom/margin-under.ts";
import { netBottom } from "#pieces/bottom/net-bottom.ts";
import { outsoleMargin } from "#pieces/bottom/outsole.ts";
import type { SockKind } from "#pieces/choices.ts";
import { edgeLength, edgePoint } from "#pieces/net-upper.ts";
import { pieceRulesFor, pieceSettingsFrom } from "#pieces/rules.ts";
import type { PieceSettings } from "#pieces/settings.ts";
import { selfCrossing } from "#plane/crossing.ts";
import { contains } from "#plane/inside.ts";
import { area } from "#plane/measure.ts";
import { cutBottom, layBottomFlat } from "#shell/bottom.ts";
import { shellRulesFor, shellSettingsFrom } from "#shell/rules.ts";
import { exampleLast } from "../../support/scans.ts";

const plain: LastedExtras = { toeCap: false, backStrip: false, sideLining: false };

function laid(last: Last) {
  const bottom = layBottomFlat(cutBottom(last));
  const net = netBottom(last, bottom), shell = shellSettingsFrom(shellRulesFor(last));
  const settingsOf = (own: Partial<PieceSettings>) => pieceSettingsFrom(pieceRulesFor(last), own);
  return { net, shell, settingsOf, make: (own: Partial<PieceSettings> = {}, sock: SockKind = "full", extras: Partial<LastedExtras> = {}) => bottomPieces({ net, on: { last, bottom }, settings: settingsOf(own), shell, chosen: { ...plain, sock, ...extras }, labels: { title: "", size: "" } }) };
}

const example = laid(exampleLast());
const { net, shell } = example;
const settings = example.settingsOf({ upperThicknessMm: 1.1, sideLiningMm: 0.6 });
const none = outsoleMargin(net, settings, plain);
const more = (extras: Partial<LastedExtras>) => {
  const margin = outsoleMargin(net, settings, { ...plain, ...extras });
  return (s: number): number => margin(s) - none(s);
};
const whole = edgeLength(net.ring);

// One thickness more lies between last and sole edge wherever another leather is lasted under (arithmetic of layers).
describe("the outsole reaches farther by what is lasted under besides", () => {
  test("a toe cap: the upper's thickness once more from cap end to cap end, nothing behind the joint", () => {
    const added = more({ toeCap: true });
    for (let s = 0; s < whole; s += 1) {
      const [x] = edgePoint(net.ring, s);
      if (x > net.toePoint[0] - settings.toeCapMm + settings.toeCapBowMm + 0.5) expect(added(s)).toBeCloseTo(1.1, 9);
      if (s <= net.jointLateral || s >= net.jointMedial) expect(added(s)).toBeCloseTo(0, 9);
    }
  });

  test("a back strip: the same at the seat, over its width", () => {
    const added = more({ backStrip: true });
    for (const s of [0, settings.backStripFeatherMm / 2 - 0.1]) for (const at of [s, whole - s]) expect(added(at)).toBeCloseTo(1.1, 9);
    expect(added(net.breastLateral)).toBeCloseTo(0, 9);
    expect(added(net.toe)).toBeCloseTo(0, 9);
  });

  test("side linings: their own thickness at joint and waist, nothing at seat and toe", () => {
    const added = more({ sideLining: true });
    for (const s of [net.waistMedial, net.waistLateral, net.jointMedial, net.jointLateral]) expect(added(s)).toBeCloseTo(0.6, 9);
    for (const s of [0, net.toe, whole]) expect(added(s)).toBeCloseTo(0, 9);
  });

  test("and a taken-out extra adds nothing", () => expect(more({})(net.toe)).toBe(0));
});

describe("the lasted margin is thicker where more is lasted under", () => {
  const thick = (extras: Partial<LastedExtras>, x: number, y: number): number =>
    marginUnder(net, settings, shell, { ...plain, ...extras }).thicknessMm(2, x, y) - marginUnder(net, settings, shell, plain).thicknessMm(2, x, y);

  test("by the upper under cap and strip, by the side lining between stiffener and puff", () => {
    expect(thick({ toeCap: true }, net.toePoint[0] - 10, 5)).toBeCloseTo(1.1, 9);
    expect(thick({ toeCap: true }, net.toePoint[0] - 70, 5)).toBe(0);
    expect(thick({ backStrip: true }, 5, -8)).toBeCloseTo(1.1, 9);
    expect(thick({ backStrip: true }, 5, -20)).toBe(0);
    expect(thick({ sideLining: true }, 150, 30)).toBeCloseTo(0.6, 9);
    expect(thick({ sideLining: true }, 20, 25)).toBe(0);
  });

  test("so the hollow that the filler fills grows, and the heel's split lift with the strip", () => {
    const bare = example.make(), capped = example.make({}, "full", { toeCap: true, sideLining: true }), strapped = example.make({}, "full", { backStrip: true });
    expect(capped.made.filler!.depth!.volumeMm3).toBeGreaterThan(bare.made.filler!.depth!.volumeMm3 + 100);
    const edgeAt = (out: typeof bare) => out.made.heel!.splitEdge.find(({ alongMm }) => alongMm === 0)!.offMm;
    // Under the seat's middle both lie on one more leather; what is levelled there does not grow by more than that.
    expect(Math.abs(edgeAt(strapped) - edgeAt(bare))).toBeLessThan(1.5);
    expect(area(strapped.drafts.find((d) => d.name === "outsole")!.outline)).toBeGreaterThan(area(bare.drafts.find((d) => d.name === "outsole")!.outline) + 20);
  });
});

describe("insole and sock", () => {
  test.each(toeShapes)("%s: what is taken in more leaves less, and crosses itself nowhere", (toe) => {
    const { measures } = completeMeasures({ sizeEu: 35, toe });
    const { make } = laid(lastFromMeasures(measures, "small last", unwatched));
    let before = Infinity;
    for (const [insoleInMm, sockInMm] of [[0, -1], [0.3, 0.7], [2, 2], [5, 2], [5, 8], [8, 8]] as const) {
      const { drafts } = make({ insoleInMm, sockInMm });
      const sock = drafts.find((d) => d.name === "sock")!, insole = drafts.find((d) => d.name === "insole")!;
      for (const { outline } of [sock, insole]) expect(selfCrossing(outline)).toBeUndefined();
      expect(area(sock.outline)).toBeLessThan(before);
      before = area(sock.outline);
    }
  });

  test.each([["insoleInMm", 20], ["insoleInMm", 40], ["sockInMm", 60], ["sockInMm", Number.NaN]] as const)("%s of %d is refused by its name", (key, mm) => {
    expect(() => example.make({ [key]: mm })).toThrow(Refusal);
    expect(() => example.make({ [key]: mm })).toThrow(/^(Insole inside the feather line|Sock inside the insole): .* cannot be used/);
  });

  test("a half sock whose front meets no edge is left out and told, not drawn whole", () => {
    const out = example.make({ sockBehindMm: 240 }, "half");
    expect(out.drafts.map((d) => d.name)).not.toContain("sock");
    expect(out.findings).toContainEqual(expect.objectContaining({ code: "bottom-line-misses", data: { piece: "sock" } }));
  });
});

test("a split lift that is needed and could not be drawn is told", () => {
  const layers = [{ name: "top piece", backMm: 5, breastMm: 5 }];
  const names = ["second insole board", "top piece", "sock"];
  expect(checkDrawn(names, layers, false)).toEqual([]);
  expect(checkDrawn(names, layers, true)).toEqual([expect.objectContaining({ code: "bottom-line-misses", data: { piece: "split lift" } })]);
});

describe("what is drawn on the bottom's pieces", () => {
  const { drafts } = example.make();
  const marksOf = (name: string) => drafts.find((d) => d.name === name)!.marks;

  test("each thickness of the filler stands beside a cross, its unit once", () => {
    const filler = drafts.find((d) => d.name === "bottom filler")!;
    const figures = filler.labels.filter(({ lines }) => /^\d\.\d$/.test(lines[0]!.text));
    expect(figures.length).toBeGreaterThan(4);
    const crosses = filler.marks.filter((m) => m.kind === "line" && m.name === "");
    expect(crosses).toHaveLength(2 * figures.length);
    for (const m of crosses) if (m.kind === "line") for (let i = 0; i < m.line.xy.length; i += 2) expect(contains(filler.outline, m.line.xy[i]!, m.line.xy[i + 1]!)).toBe(true);
    expect(filler.labels.flatMap(({ lines }) => lines.map((l) => l.text)).filter((text) => text === "mm at the crosses")).toHaveLength(1);
  });

  test("a lift has its nails, and the second board its direction", () => {
    expect(marksOf("lift 1").filter((m) => m.kind === "prick").map((m) => m.name)).toEqual(Array.from({ length: 5 }, () => "nails"));
    for (const name of ["insole", "second insole board", "outsole"]) expect(marksOf(name).filter((m) => m.kind === "arrow"), name).toHaveLength(1);
  });
});
