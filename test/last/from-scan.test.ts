// Truth: the synthetic lasts of ../shared/data/lasts (CC0), measured there on the generating surface, not on the triangles.
import { describe, expect, test } from "vitest";
import { unwatched } from "#base/watch.ts";
import { lastFromScan } from "#last/from-scan.ts";
import type { Last } from "#last/last.ts";
import { cleanScan } from "#mesh/clean.ts";
import type { Mesh } from "#mesh/mesh.ts";
import { readScan } from "#mesh/read.ts";
import { asInTruth, featherError, girthsMm, intoTruth, laid, lengthsMm, rotations, scanOf, worst, type FileRule } from "../support/against-truth.ts";
import { hasShared, sharedBytes } from "../support/shared.ts";
import { lastNames, truthOf } from "../support/truth-last.ts";

const loaded = new Map<string, Mesh>();
function load(file: string): Mesh {
  let mesh = loaded.get(file);
  if (!mesh) loaded.set(file, (mesh = cleanScan(readScan(file, sharedBytes("lasts", file)).mesh, unwatched).mesh));
  return mesh;
}
const find = (mesh: Mesh): Last => lastFromScan(mesh, { name: "trial" }, unwatched);

/** Limits of the trade's work: lengths and widths 0.7 mm, girths 1.5 mm, feather line 0.6 mm root mean square and 2 mm at most. */
function expectNear(last: Last, name: string, rule: FileRule): void {
  const truth = truthOf(name);
  expect(worst(last, truth, lengthsMm)).toBeLessThan(0.7);
  expect(worst(last, truth, girthsMm)).toBeLessThan(1.5);
  const feather = featherError(last, rule, truth.feather.points);
  expect(feather.rms).toBeLessThan(0.6);
  expect(feather.max).toBeLessThan(2);
}

describe.skipIf(!hasShared)("a clean synthetic last", () => {
  test.each(lastNames)("%s: side, unit, measures and feather line as in truth", (name) => {
    const last = find(load(`${name}.stl`));
    const truth = truthOf(name);
    expect(last.side).toBe(truth.side);
    expect(last.placement.unit).toBe("mm");
    expectNear(last, name, asInTruth);
    // A clean scan is followed far more closely than the limits ask; these guard against a slow decline.
    expect(featherError(last, asInTruth, truth.feather.points).rms).toBeLessThan(0.1);
    expect(worst(last, truth, girthsMm)).toBeLessThan(0.5);
    expect(Math.abs(last.measures.featherLength - truth.values.featherLength)).toBeLessThan(0.7);
    // Landmarks through the placement: frame, axis and pitch together. Seat and joint points may slide along the line.
    for (const mark of ["toePoint", "seatPoint", "vampPoint", "waistPoint", "instepPoint", "jointMedial", "jointLateral"] as const) {
      const p = intoTruth(last, asInTruth, last.landmarks[mark]);
      expect(Math.hypot(...p.map((v, k) => v - truth.points[mark][k]!)), mark).toBeLessThan(1);
    }
    const narrow = name.includes("almond") || name.includes("pointed");
    expect(last.findings.map((f) => f.code)).toEqual(["unit-read", ...(narrow ? ["size-counts-point"] : [])]);
  });

  const turned = rotations(11);
  const units = [0.001, 0.1, 1 / 25.4, 0.01, 1];
  test.each(lastNames.map((name, i) => [name, i] as const))("%s: the same in any pose, unit and hand", (name, i) => {
    const mesh = load(`${name}.stl`);
    const rule: FileRule = { unitPerMm: units[i]!, rotation: turned.next().value as number[][], translationMm: [310, -95, 40] };
    const last = find(laid(mesh, rule));
    expect(last.side).toBe(truthOf(name).side);
    expect(last.placement.unitPerMm).toBe(units[i]);
    expectNear(last, name, rule);
    const other = find(laid(mesh, rule, true));
    expect(other.side).not.toBe(last.side);
    for (const k of [...lengthsMm, ...girthsMm]) expect(Math.abs(other.measures[k] - last.measures[k]), k).toBeLessThan(0.1);
  });

  test("the same scan gives the same bytes", () => {
    const mesh = load(`${lastNames[0]}.stl`);
    const [a, b] = [find(mesh), find(mesh)];
    expect(a.feather.points).toEqual(b.feather.points);
    expect(a.mesh.positions).toEqual(b.mesh.positions);
  });
});

describe.skipIf(!hasShared)("a damaged scan of a synthetic last", () => {
  test.each(lastNames)("%s: side, unit and measures hold, and what is doubtful is said", (name) => {
    const scan = scanOf(name);
    const last = find(load(scan.file));
    expect(last.side).toBe(truthOf(name).side);
    expect(last.placement.unitPerMm).toBeCloseTo(scan.unitPerMm, 12);
    expectNear(last, name, scan);
    // Toe and seat point by their distance. The line runs along the axis at the joints, where 3 mm along it are no error (README of
    // the data): they are held across it.
    for (const mark of ["toePoint", "seatPoint"] as const) {
      const p = intoTruth(last, scan, last.landmarks[mark]);
      expect(Math.hypot(...p.map((v, k) => v - truthOf(name).points[mark][k]!)), mark).toBeLessThan(1.5);
    }
    for (const mark of ["jointMedial", "jointLateral"] as const) {
      const [x, y, z] = intoTruth(last, scan, last.landmarks[mark]);
      const [tx, ty, tz] = truthOf(name).points[mark];
      expect(Math.hypot(y - ty, z - tz), mark).toBeLessThan(1.5);
      expect(Math.abs(x - tx), mark).toBeLessThan(3);
    }
    // Every one of them is rough or coarse; the roughest has a feather edge that its noise makes doubtful.
    const codes = last.findings.map((f) => f.code);
    expect(codes.some((c) => /^scan-(very-)?(rough|coarse)$/.test(c))).toBe(true);
  });
});

describe.skipIf(!hasShared)("a comb that is no level", () => {
  // The flat top of a clean last, bent by us; everything under it is truth.
  const bent = (name: string, lift: (x: number, y: number) => number): Mesh => {
    const mesh = load(`${name}.stl`);
    const positions = mesh.positions.slice();
    const level = truthOf(name).combHeight;
    for (let i = 0; i < positions.length; i += 3) if (positions[i + 2]! > level - 0.01) positions[i + 2] = level + lift(positions[i]! - 55, positions[i + 1]!);
    return { positions, triangles: mesh.triangles };
  };
  test.each([
    ["rounded", "comb-missing", (x: number, y: number) => 3 - 0.0036 * (x * x + 2.25 * y * y)],
    ["slanting by 6 degrees", "pitch-doubtful", (x: number) => 0.1 * x],
  ] as const)("%s: pitch comes from seat and tread, and that is said", (_, code, lift) => {
    for (const name of [lastNames[2], lastNames[4]]) {
      const last = find(bent(name, lift));
      expect(last.findings.map((f) => f.code)).toContain(code);
      expect(worst(last, truthOf(name), lengthsMm)).toBeLessThan(1);
      expect(worst(last, truthOf(name), girthsMm)).toBeLessThan(1.5);
    }
  });
});

describe.skipIf(!hasShared)("the frame of a last", () => {
  test("line, curves and mesh keep to what a Last promises", () => {
    const last = find(load(`${lastNames[1]}.stl`));
    const { feather, landmarks, mesh, side } = last;
    expect(landmarks.seatPoint[0]).toBeCloseTo(0, 3);
    expect(landmarks.seatPoint[1]).toBeCloseTo(0, 3);
    expect(landmarks.toePoint[1]).toBeCloseTo(0, 9);
    let low = Infinity;
    for (let i = 2; i < mesh.positions.length; i += 3) low = Math.min(low, mesh.positions[i]!);
    expect(low).toBeCloseTo(0, 9);
    const n = feather.confidence.length;
    expect(n).toBeGreaterThanOrEqual(400);
    const step = (i: number): number => Math.hypot(...[0, 1, 2].map((k) => feather.points[3 * ((i + 1) % n) + k]! - feather.points[3 * i + k]!));
    const steps = Array.from({ length: n }, (_, i) => step(i));
    expect(Math.max(...steps) - Math.min(...steps)).toBeLessThan(0.05);
    // From the seat point the line leaves over the medial side: +y on a right last, −y on a left one.
    expect(Math.sign(feather.points[3 * 40 + 1]!)).toBe(side === "right" ? 1 : -1);
    for (const curve of [last.centreRidge, last.backCurve, last.bottomCentre]) for (let i = 1; i < curve.points.length; i += 3) expect(Math.abs(curve.points[i]!)).toBeLessThan(1e-6);
    expect([...last.centreRidge.points.subarray(0, 3)].every((v, k) => Math.abs(v - landmarks.toePoint[k]!) < 0.2)).toBe(true);
    expect([...last.backCurve.points.subarray(0, 3)].every((v, k) => Math.abs(v - landmarks.seatPoint[k]!) < 0.2)).toBe(true);
  });

  test("the maker's word for the side is kept, and a contradiction is said", () => {
    const mesh = load(`${lastNames[0]}.stl`); // a right one
    const last = lastFromScan(mesh, { name: "trial", side: "left" }, unwatched);
    expect(last.side).toBe("left");
    expect(last.findings.map((f) => f.code)).toContain("side-against-shape");
  });
});
