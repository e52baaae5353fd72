// Scans that lack a part. Cut by us from the made last (invented numbers) and from a synthetic last of ../shared/data/lasts.
import { describe, expect, test } from "vitest";
import { explain } from "#base/findings.ts";
import { Refusal } from "#base/refusal.ts";
import { unwatched } from "#base/watch.ts";
import { lastFromScan } from "#last/from-scan.ts";
import { cleanScan } from "#mesh/clean.ts";
import type { Mesh } from "#mesh/mesh.ts";
import { readScan } from "#mesh/read.ts";
import { laid, rotations, scanOf } from "../support/against-truth.ts";
import { exampleLast } from "../support/scans.ts";
import { hasShared, sharedBytes } from "../support/shared.ts";
import { lastNames } from "../support/truth-last.ts";
import { partOf } from "../support/worn.ts";

const turned = rotations(23);
/** What is said of a scan: the codes of its findings, or of its refusal. */
function saidOf(part: Mesh): readonly string[] {
  const scanned = laid(part, { unitPerMm: 1, rotation: turned.next().value as number[][], translationMm: [50, 60, -70] });
  try {
    return lastFromScan(cleanScan(scanned, unwatched).mesh, { name: "part", scanned }, unwatched).findings.map((f) => f.code);
  } catch (error) {
    if (error instanceof Refusal) return [error.finding.code, explain(error.finding)];
    throw error;
  }
}

describe("a made last", () => {
  const { mesh } = exampleLast();
  const parts: readonly (readonly [string, (p: readonly number[], n: readonly number[]) => boolean, string, RegExp])[] = [
    ["scanned standing on the table", (p, n) => !(n[2]! < -0.6 && p[2]! < 30), "part-not-scanned", /hides its bottom/],
    ["the lower 18 mm missing", (p) => p[2]! > 18, "part-not-scanned", /scan it standing, then lying/],
    ["one side missing", (p) => p[1]! < 0, "part-not-scanned", /lies hides a side/],
    ["the other side missing", (p) => p[1]! > 0, "part-not-scanned", /Only part of the last/],
    ["no toe", (p) => p[0]! < 215, "end-not-scanned", /no toe end/],
    ["no heel", (p) => p[0]! > 30, "end-not-scanned", /no heel end/],
  ];
  test.each(parts)("%s: refused, with what is missing and what to do", (_, keep, code, words) => {
    const [got, text] = saidOf(partOf(mesh, keep));
    expect(got).toBe(code);
    expect(text).toMatch(words);
  });

  test.each([800, 3000])("a crumb %i mm away does not hide that the bottom is missing, nor harm a whole last", (away) => {
    const withCrumb = ({ positions, triangles }: Mesh): Mesh => {
      const n = positions.length / 3;
      return { positions: Float64Array.from([...positions, away, 0, 0, away, 3, 0, away, 0, 3]), triangles: Uint32Array.from([...triangles, n, n + 1, n + 2]) };
    };
    expect(saidOf(withCrumb(partOf(mesh, (p) => p[2]! > 18)))[0]).toBe("part-not-scanned");
    expect(saidOf(withCrumb(mesh))).toEqual(["unit-read"]);
  });

  test("a missing comb does no harm; a part of the tread is told", () => {
    let top = 0;
    for (let i = 2; i < mesh.positions.length; i += 3) top = Math.max(top, mesh.positions[i]!);
    const whole = saidOf(mesh);
    expect(whole).toEqual(["unit-read"]);
    expect(saidOf(partOf(mesh, (p) => p[2]! < top - 1)).filter((c) => /scanned|guessed/.test(c))).toEqual([]);
    expect(saidOf(partOf(mesh, (p, n) => !(n[2]! < -0.6 && p[2]! < 30 && p[0]! > 150 && p[0]! < 185)))).toContain("bottom-guessed");
  });
});

describe.skipIf(!hasShared)("the damaged scans of synthetic lasts", () => {
  test.each(lastNames)("%s is whole enough", (name) => {
    const { file } = scanOf(name);
    const codes = saidOf(readScan(file, sharedBytes("lasts", file)).mesh);
    expect(codes.filter((c) => /not-scanned|bottom-guessed/.test(c))).toEqual([]);
  });
});
