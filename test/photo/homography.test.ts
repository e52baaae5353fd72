import { describe, expect, test } from "vitest";
import { homographyOf, through } from "#photo/homography.ts";
import { toPicture, toPlane } from "#photo/placing.ts";
import { pxPerMmAt, tiltDegOf } from "#photo/pose.ts";
import { seenAt, type Shot } from "./support/camera.ts";
import { seeded } from "./support/chance.ts";

const unitSquare = [0, 0, 1, 0, 1, 1, 0, 1];

// Numbers of this block are solved exactly, outside the project: rows PH-01 to PH-05 and PH-15 of the list of outside checks.
describe("homography", () => {
  test("from four points (PH-01)", () => {
    const h = homographyOf(unitSquare, [0, 0, 4, 0, 3, 3, 1, 2]);
    [12 / 7, 12 / 7, 0, 0, 24 / 7, 0, -4 / 7, 5 / 7, 1].forEach((v, i) => expect(Math.abs(h[i]! - v), `entry ${i}`).toBeLessThan(1e-12));
  });

  test("applied, and the middle lands where the diagonals cross (PH-02, PH-03)", () => {
    const h = homographyOf(unitSquare, [0, 0, 4, 0, 3, 3, 1, 2]);
    const [x, y] = through(h, 0.5, 0.5);
    expect(Math.abs(x - 1.6) + Math.abs(y - 1.6)).toBeLessThan(1e-9);
    const [u, v] = through(h, 0.25, 0.75);
    expect(Math.abs(u - 16 / 13) + Math.abs(v - 24 / 13)).toBeLessThan(1e-9);
    // The other diagonal of the picture, (4, 0) to (1, 2), goes through it too.
    expect(Math.abs((x - 4) * (2 - 0) - (y - 0) * (1 - 4))).toBeLessThan(1e-9);
  });

  test("the cross-ratio of four points of a line is kept (PH-04, PH-05)", () => {
    const seen = [[232, 613], [221, 341], [215, 189], [210, 98]] as const;
    const apart = (i: number, k: number): number => Math.hypot(seen[i]![0] - seen[k]![0], seen[i]![1] - seen[k]![1]);
    const ratio = (apart(0, 2) * apart(1, 3)) / (apart(0, 3) * apart(1, 2));
    expect(Math.abs(ratio - 1.316378)).toBeLessThan(1e-6);
    // A published photograph of tiles (an answer in a forum): from AB = 0.6 and AD = 1.8 with BC and CD alike unknown, CD = 0.5843.
    const bd = 1.2;
    const bc = (bd * 0.6) / (ratio * 1.8 - bd);
    expect(Math.abs(bd - bc - 0.5843)).toBeLessThan(1e-3);
  });

  test("does not hang on where the origin lies (PH-15)", () => {
    const chance = seeded(3);
    const from = Array.from({ length: 24 }, () => 100 * chance.even());
    const h = [1.1, 0.2, 3, -0.1, 0.9, 5, 0.001, 0.0005, 1];
    const to = from.flatMap((_, i) => (i % 2 === 0 ? through(h, from[i]!, from[i + 1]!) : []));
    for (const far of [0, 1e4, -3e5]) {
      const moved = from.map((v) => v + far);
      const found = homographyOf(moved, to.map((v) => v + far));
      const [x, y] = through(found, 50 + far, 40 + far);
      const [u, v] = through(h, 50, 40);
      expect(Math.abs(x - u - far) + Math.abs(y - v - far), `${far}`).toBeLessThan(1e-6);
    }
  });
});

describe("placing", () => {
  const shot: Shot = { width: 2000, height: 1500, tiltDeg: 24, fromDeg: 130, rollDeg: 20 };

  /** The placing of a camera of the tests, from four of its points. */
  function placingOf(of: Shot) {
    const corners = [0, 0, 360, 0, 360, 260, 0, 260];
    const centrePx = [(of.width - 1) / 2, (of.height - 1) / 2] as const;
    const radiusPx = Math.hypot(of.width, of.height) / 2;
    const seen = [0, 2, 4, 6].flatMap((i) => seenAt(of, corners[i]!, corners[i + 1]!).map((v, c) => (v - centrePx[c]!) / radiusPx));
    return { homography: homographyOf(corners, seen), k1: 0, k2: 0, centrePx, radiusPx };
  }

  test("there and back through any lens", () => {
    const placing = { ...placingOf(shot), k1: -0.12, k2: 0.03 };
    for (const [x, y] of [[0, 0], [360, 260], [180, 130], [20, 240]] as const) {
      const [u, v] = toPlane(placing, ...toPicture(placing, x, y));
      expect(Math.hypot(u - x, v - y)).toBeLessThan(1e-9);
    }
  });

  test("tilt and pixels to a millimetre are those of the camera", () => {
    for (const tiltDeg of [0, 3, 12, 24, 35]) expect(Math.abs(tiltDegOf(placingOf({ ...shot, tiltDeg })) - tiltDeg), `${tiltDeg}`).toBeLessThan(0.5);
    // Straight above: width of the picture over what it spans.
    expect(pxPerMmAt(placingOf({ ...shot, tiltDeg: 0, spanMm: 400 }), 100, 50)).toBeCloseTo(5, 6);
  });

  test("what stands higher is read larger by h / (H − h) (PH-09)", () => {
    const above: Shot = { width: 4000, height: 3000, tiltDeg: 0, fromDeg: 0, focal: 0.75, spanMm: 500 / 0.75 };
    const placing = placingOf(above);
    const read = (h: number): number => {
      const [ax, ay] = toPlane(placing, ...seenAt(above, 55, 125, h)), [bx, by] = toPlane(placing, ...seenAt(above, 305, 125, h));
      return Math.hypot(ax - bx, ay - by);
    };
    expect(Math.abs(read(0) - 250)).toBeLessThan(1e-6);
    // The camera stands 500 mm above; 1 mm of height is 0.200 %, 0.5 mm on 250 mm.
    expect(Math.abs(read(1) / 250 - 1 - 1 / 499)).toBeLessThan(1e-6);
    expect(Math.abs(read(1) / 250 - 1 - 0.002)).toBeLessThan(1e-4);
  });
});
