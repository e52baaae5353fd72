// Photographs taken by a camera of our own, with known truth: tilt to 30°, both kinds of lens distortion, 0.5 px of noise in where
// things are seen, uneven and coloured light, blur, grain, JPEG. Held to: outline 0.35 mm at root mean square, a 230 mm length
// within 0.3 mm + 0.1 %.
import { encode } from "jpeg-js";
import { beforeAll, describe, expect, test } from "vitest";
import { severityOf } from "#base/findings.ts";
import { Refusal } from "#base/refusal.ts";
import { unwatched } from "#base/watch.ts";
import { findMarkers } from "#photo/find-markers.ts";
import { flatView } from "#photo/flat-view.ts";
import { greyOf } from "#photo/grey.ts";
import { readyForPhotos } from "#photo/image-library.ts";
import type { Picture } from "#photo/picture.ts";
import { readPicture } from "#photo/read-picture.ts";
import { seeCard } from "#photo/see-card.ts";
import { tracePhoto, type SaidOfCard, type TracedPhoto } from "#photo/trace-photo.ts";
import { cardSheet, markerMm, squareMm } from "#photo/card.ts";
import { photograph, seenAt, type Shot } from "./support/camera.ts";
import { paintTable, type Rgb, type Table } from "./support/plane.ts";
import { apart, soleLine, strip, tapedHalf } from "./support/shapes.ts";

const cream: Rgb = [0.72, 0.6, 0.33];
const blue: Rgb = [0.1, 0.25, 0.55];
const dark: Rgb = [0.03, 0.03, 0.035];
const pencil: Rgb = [0.3, 0.3, 0.31];
const upper = tapedHalf(60, 130, 5), lower = tapedHalf(50, 32);
const band = strip(70, 180, 3), bandLevel = strip(70, 60, -2);
const size = { width: 2000, height: 1500 };

beforeAll(readyForPhotos);

const trace = (picture: Picture, said: SaidOfCard = { barMm: 200 }): TracedPhoto => tracePhoto(picture, said, unwatched);
const asJpeg = (picture: Picture, quality: number): Picture =>
  readPicture("photo.jpg", new Uint8Array(encode({ ...picture, data: picture.rgba }, quality).data));

/** Length of a 230 × 20 mm strip as traced: mean over its long sides, from the outline's ends along its own direction. */
function lengthOf(outline: Float64Array, turnDeg: number): number {
  const [c, s] = [Math.cos((turnDeg * Math.PI) / 180), Math.sin((turnDeg * Math.PI) / 180)];
  const along: number[] = [], across: number[] = [];
  for (let i = 0; i < outline.length; i += 2) {
    along.push(c * outline[i]! + s * outline[i + 1]!);
    across.push(-s * outline[i]! + c * outline[i + 1]!);
  }
  const [low, high] = [Math.min(...across), Math.max(...across)];
  const [left, right] = [Math.min(...along), Math.max(...along)];
  const ends = (near: number): number => {
    const mine = along.filter((a, i) => Math.abs(a - near) < 1 && across[i]! > low + 3 && across[i]! < high - 3);
    return mine.reduce((sum, a) => sum + a, 0) / mine.length;
  };
  return ends(right) - ends(left);
}

function holds(found: TracedPhoto, index: number, truth: Float64Array): { rms: number; max: number } {
  const off = apart(found.outlines[index]!.xy, truth);
  expect(off.rms, `outline ${index}`).toBeLessThan(0.35);
  return off;
}

describe("what is traced lies where it lay", () => {
  test("two halves on dark paper, 15° from straight above, barrel lens, shaken, uneven warm light, JPEG", () => {
    const table: Table = { paper: "A4", ground: dark, shapes: [{ xy: lower, colour: cream }, { xy: upper, colour: blue }], joint: { dx: 0.7, dy: -0.4, turn: 0.004 } };
    const shot: Shot = { ...size, tiltDeg: 15, fromDeg: 70, k1: -0.1, k2: 0.02, shakePx: 0.5, grain: 2, darkest: 0.6, light: [1, 0.92, 0.75], blurPx: 0.9 };
    const found = trace(asJpeg(photograph(paintTable(table), shot), 88));
    expect(found.kinds).toEqual(["cut piece", "cut piece"]);
    const [first, second] = apart(found.outlines[0]!.xy, lower).rms < 5 ? [lower, upper] : [upper, lower];
    holds(found, 0, first);
    holds(found, 1, second);
    expect(Math.abs(found.check.tiltDeg - 15)).toBeLessThan(1.5);
    for (const { askedMm, readMm } of found.check.heldOut) expect(Math.abs(readMm - askedMm)).toBeLessThan(0.3 + 0.001 * askedMm);
    expect(found.findings.filter((f) => severityOf(f) === "stop")).toEqual([]);
  });

  test("30° from straight above, cushion lens, half on white paper beside a 230 mm strip", () => {
    const table: Table = { paper: "A4", shapes: [{ xy: lower, colour: cream }, { xy: band, colour: blue }] };
    const found = trace(photograph(paintTable(table), { ...size, width: 2400, height: 1800, tiltDeg: 30, fromDeg: 200, k1: 0.08, shakePx: 0.5, grain: 2, darkest: 0.5, spanMm: 450 }));
    expect(found.kinds).toEqual(["cut piece", "cut piece"]);
    holds(found, 0, lower);
    holds(found, 1, band);
    expect(Math.abs(lengthOf(found.outlines[1]!.xy, 3) - 230)).toBeLessThan(0.3 + 0.23);
  });

  test("a pencil line with a gap, a line drawn across it, turned picture", () => {
    const sole = soleLine(180, 150, 4);
    const table: Table = { paper: "Letter", shapes: [{ xy: sole, colour: pencil, strokeMm: 0.5, gaps: [[0.3, 0.3026]] }, { xy: [120, 80, 121, 190], colour: pencil, strokeMm: 0.4 }] };
    const found = trace(photograph(paintTable(table), { ...size, tiltDeg: 8, fromDeg: 310, rollDeg: 175, k1: -0.05, shakePx: 0.3, grain: 2, darkest: 0.7, spanMm: 440 }));
    expect(found.kinds).toEqual(["drawn line"]);
    holds(found, 0, sole);
    expect(found.findings.map((f) => f.code)).toContain("photo-line-open");
  });

  test.each([["dark", dark], ["white", undefined]] as const)("marks drawn across the edge and a soft shadow over all, on a %s ground", (_, ground) => {
    const half = tapedHalf(45, 45);
    const ink: Rgb = [0.02, 0.02, 0.03];
    const marks = [[100, 60, 101, 90], [60, 75, 200, 85], [160, 50, 158, 80]].map((xy) => ({ xy, colour: ink, strokeMm: 0.5 }));
    const picture = photograph(paintTable({ paper: "A4", ...(ground ? { ground } : {}), shapes: [{ xy: half, colour: cream }, ...marks] }), { ...size, tiltDeg: 9, fromDeg: 120, k1: -0.06, grain: 3, darkest: 0.45, blurPx: 0.9 });
    for (let k = 0; k < picture.rgba.length; k++) {
      const x = (k >> 2) % picture.width, y = Math.floor(k / 4 / picture.width);
      // A third darker on one side, over some 30 mm; by the eye's scale of the values.
      if (k % 4 < 3) picture.rgba[k] = picture.rgba[k]! * (1 - 0.3 / (1 + Math.exp(-(x - 0.7 * y - 550) / 55))) ** (1 / 2.2);
    }
    const found = trace(picture);
    expect(found.kinds).toEqual(["cut piece"]);
    expect(apart(found.outlines[0]!.xy, half).rms).toBeLessThan(0.1);
    // Where a line runs on beyond the edge, up to its own width and a half is left of it; slits keep their tips.
    expect(apart(found.outlines[0]!.xy, half).max).toBeLessThan(1.5);
  });

  test("a flatbed scan: no perspective, no lens; finer than the card needs", () => {
    const table: Table = { paper: "Letter", shapes: [{ xy: bandLevel, colour: blue }, { xy: upper, colour: cream }] };
    const found = trace(photograph(paintTable(table), { ...size, width: 2480, height: 1754, tiltDeg: 0, fromDeg: 0, focal: 400, spanMm: 420, grain: 1.5, blurPx: 0.7 }));
    expect(holds(found, 0, upper).rms).toBeLessThan(0.1);
    expect(holds(found, 1, bandLevel).rms).toBeLessThan(0.1);
    expect(Math.abs(lengthOf(found.outlines[1]!.xy, -2) - 230)).toBeLessThan(0.1);
    expect(found.check.rmsPx).toBeLessThan(0.5); // PH-14: good
  });

  test("the same picture gives the same numbers, and shows itself from straight above", () => {
    const picture = photograph(paintTable({ paper: "A4", shapes: [{ xy: lower, colour: cream }] }), { ...size, tiltDeg: 10, fromDeg: 20, grain: 2, rollDeg: 90, width: 1800, height: 1800, spanMm: 420 });
    const [a, b] = [trace(picture), trace(picture)];
    expect(a).toEqual(b);
    const view = flatView(picture, a, 2);
    expect([view.width, view.height]).toEqual([Math.round(2 * (a.window.maxX - a.window.minX)), Math.round(2 * (a.window.maxY - a.window.minY))]);
    // A place inside the piece and one beside it: more red than blue, and white.
    const at = (x: number, y: number): readonly number[] => {
      const k = 4 * (Math.round(2 * (a.window.maxY - y)) * view.width + Math.round(2 * (x - a.window.minX)));
      return [...view.rgba.subarray(k, k + 3)];
    };
    const [piece, paper] = [at(100, 70), at(300, 200)];
    expect(piece[0]! - piece[2]!).toBeGreaterThan(40);
    expect(Math.abs(paper[0]! - paper[2]!)).toBeLessThan(20);
  });
});

describe("corners of squares against corners of markers (PH-12, PH-14)", () => {
  test("corners of squares lie clearly nearer to truth", () => {
    const shot: Shot = { ...size, tiltDeg: 18, fromDeg: 250, grain: 2, blurPx: 0.8 };
    const picture = photograph(paintTable({ paper: "A4", shapes: [] }), shot);
    const squares = seeCard(picture, greyOf(picture)).corners.map((c) => {
      const [u, v] = seenAt(shot, c.xMm, c.yMm);
      return Math.hypot(u - c.xPx, v - c.yPx);
    });
    const printed = new Map(cardSheet("A4", "left").markers.map((m) => [m.id, m]));
    const edge = (squareMm - markerMm) / 2;
    const markers = findMarkers(picture).flatMap(({ id, corners }) => {
      const m = printed.get(id);
      if (!m) return [];
      const [u, v] = seenAt(shot, m.xMm + edge, m.yMm + squareMm - edge);
      return [Math.hypot(u - corners[0]!, v - corners[1]!)];
    });
    const rms = (list: readonly number[]): number => Math.sqrt(list.reduce((s, d) => s + d * d, 0) / list.length);
    expect(squares.length).toBeGreaterThan(105);
    expect(markers.length).toBeGreaterThan(40);
    expect(rms(squares)).toBeLessThan(0.2);
    expect(rms(squares)).toBeLessThan(0.6 * rms(markers));
  });
});

describe("a picture that cannot be as true as it must be is refused with advice", () => {
  const plain: Table = { paper: "A4", shapes: [{ xy: lower, colour: cream }] };
  const shot: Shot = { width: 1720, height: 1290, tiltDeg: 4, fromDeg: 0, grain: 2 };
  const refusal = (picture: Picture, said?: SaidOfCard): string => {
    try {
      trace(picture, said);
    } catch (error) {
      if (error instanceof Refusal) {
        expect(error.message).toMatch(/take|lay|move|print|measure/i);
        return error.finding.code;
      }
      throw error;
    }
    return "none";
  };
  const cases: readonly { readonly what: string; readonly table?: Partial<Table>; readonly shot?: Partial<Shot>; readonly said?: SaidOfCard; readonly code: RegExp }[] = [
    { what: "no card", table: { sheets: [] }, shot: { width: 1000, height: 750 }, code: /^photo-no-card$/ },
    { what: "half the card", table: { sheets: ["left"] }, code: /^photo-half-card$/ },
    { what: "half the card outside the picture", shot: { lookAt: [330, 125], spanMm: 330 }, code: /^photo-half-card$/ },
    { what: "moved or out of focus", shot: { blurPx: 2.6 }, code: /^photo-(blurred|no-card|half-card)$/ },
    { what: "too few pixels", shot: { width: 1200, height: 900 }, code: /^photo-too-coarse$/ },
    { what: "too slanting", shot: { tiltDeg: 42, spanMm: 450, width: 2100, height: 1575, focal: 1.2 }, code: /^photo-too-oblique$/ },
    { what: "the card bulges", shot: { bump: (x) => 9 * Math.max(0, 1 - ((x - 90) / 70) ** 2) }, code: /^photo-(card-bent|uneven-fit|length-off)$/ },
    { what: "white tape on white paper", table: { shapes: [{ xy: lower, colour: [0.795, 0.795, 0.775] }] }, code: /^photo-nothing-found$/ },
    { what: "an empty window", table: { shapes: [] }, code: /^photo-nothing-found$/ },
    { what: "the piece reaches out of the window", table: { shapes: [{ xy: tapedHalf(15, 60), colour: cream }] }, code: /^photo-edge-cut$/ },
  ];
  test.each(cases)("$what", ({ table, shot: other, said, code }) => {
    expect(refusal(photograph(paintTable({ ...plain, ...table }), { ...shot, ...other }), said)).toMatch(code);
  });

  test("a bar that no printer makes is refused before anything is looked at", () => {
    expect(refusal({ width: 1, height: 1, rgba: new Uint8Array(4) }, { barMm: 150 })).toBe("photo-bar-off");
  });

  test("a card printed at 97 %: right by the maker's rule, doubted without it", () => {
    const table: Table = { ...plain, shapes: [{ xy: bandLevel, colour: blue }], printedAt: 0.97 };
    const picture = photograph(paintTable(table), shot);
    const measured = trace(picture, { barMm: 194 });
    expect(Math.abs(lengthOf(measured.outlines[0]!.xy, -2) - 230)).toBeLessThan(0.3 + 0.23);
    expect(measured.findings.map((f) => f.code)).toContain("photo-printed-off");
    const unmeasured = trace(picture, {});
    expect(Math.abs(lengthOf(unmeasured.outlines[0]!.xy, -2) - 230)).toBeGreaterThan(5);
    expect(unmeasured.findings.map((f) => [f.code, severityOf(f)])).toContainEqual(["photo-bar-not-measured", "look"]);
  });
});
