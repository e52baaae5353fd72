// How the noise of seen corners reaches the plane: rows PH-06 to PH-08 of the list of outside checks, worked out there by 400
// draws with 0.5 px on every coordinate at 5 px a millimetre. Ours are seeded draws through our own fit.
import { expect, test } from "vitest";
import { homographyOf, through } from "#photo/homography.ts";
import { seenAt, type Shot } from "./support/camera.ts";
import { seeded } from "./support/chance.ts";

/** Root mean square error over the middle 180 mm square, and standard deviation of a 230 mm length across it. */
function spread(points: readonly (readonly [number, number])[], tiltDeg: number): { rms: number; length: number } {
  const shot: Shot = { width: 2400, height: 1800, tiltDeg, fromDeg: 90, lookAt: [0, 0], spanMm: 480, focal: 0.75 };
  const chance = seeded(11);
  const plane = points.flat();
  let sum = 0, count = 0;
  const lengths: number[] = [];
  const ends = [[-115, 0], [115, 0]] as const;
  for (let run = 0; run < 400; run++) {
    const seen = points.flatMap(([x, y]) => seenAt(shot, x, y).map((v) => v + 0.5 * chance.normal()));
    const back = homographyOf(seen, plane);
    for (let x = -90; x <= 90; x += 30) for (let y = -90; y <= 90; y += 30) {
      const [u, v] = through(back, ...seenAt(shot, x, y));
      sum += (u - x) ** 2 + (v - y) ** 2;
      count++;
    }
    const [a, b] = ends.map(([x, y]) => through(back, ...seenAt(shot, x, y))) as [[number, number], [number, number]];
    lengths.push(Math.hypot(a[0] - b[0], a[1] - b[1]));
  }
  const mean = lengths.reduce((s, l) => s + l, 0) / lengths.length;
  return { rms: Math.sqrt(sum / count), length: Math.sqrt(lengths.reduce((s, l) => s + (l - mean) ** 2, 0) / lengths.length) };
}

const rows = [
  { row: "PH-06, four corners of a 180 mm square", points: [[-90, -90], [90, -90], [90, 90], [-90, 90]], rms: [0.115, 0.121, 0.144], length: [0.13, 0.14] },
  { row: "PH-07, a hundred points 20 mm apart", points: Array.from({ length: 100 }, (_, k) => [-90 + 20 * (k % 10), -90 + 20 * Math.floor(k / 10)]), rms: [0.031, 0.033, 0.038], length: [0.039, 0.046] },
  { row: "PH-08, four corners of 260 × 180 mm", points: [[-130, -90], [130, -90], [130, 90], [-130, 90]], rms: [0.108, 0.116, 0.142], length: [0.086, 0.111] },
] as const;

test.each(rows)("$row", ({ points, rms, length }) => {
  [0, 15, 30].forEach((tiltDeg, i) => {
    const found = spread(points as readonly (readonly [number, number])[], tiltDeg);
    // The list does not say where its camera stands when it is tilted by 30°, so that row is held to 20 instead of 15 %.
    expect(Math.abs(found.rms / rms[i]! - 1), `${tiltDeg}°: ${found.rms}`).toBeLessThan(tiltDeg === 30 ? 0.2 : 0.15);
    expect(found.length).toBeGreaterThan(0.85 * length[0]);
    expect(found.length).toBeLessThan(1.15 * length[1]);
  });
});
