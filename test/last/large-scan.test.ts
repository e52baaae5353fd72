// A scan far finer than is needed, as scanners of teeth and jewels write them: the example's last (invented numbers), each of its
// triangles cut into 81. The surface is the very same, so its measures are known.
import { beforeAll, describe, expect, test } from "vitest";
import { explain, type Finding } from "#base/findings.ts";
import { Cancelled } from "#base/watch.ts";
import { lastFromScan } from "#last/from-scan.ts";
import type { Last } from "#last/last.ts";
import { cleanScan } from "#mesh/clean.ts";
import { triangleCount, type Mesh } from "#mesh/mesh.ts";
import { readScan } from "#mesh/read.ts";
import { girthsMm, lengthsMm } from "../support/against-truth.ts";
import { finer } from "../support/finer.ts";
import { asStl } from "../support/scan-files.ts";
import { exampleLast } from "../support/scans.ts";

describe("a scan of more than two million triangles", () => {
  let scanned: Mesh;
  let cleaned: { readonly mesh: Mesh; readonly repairs: readonly Finding[] };
  let last: Last;
  /** Each word of the watch: stage and share. */
  const told: (readonly [string, number])[] = [];

  beforeAll(() => {
    scanned = readScan("fine.stl", asStl(finer(exampleLast().mesh, 9))).mesh;
    const watch = (stage: string, share: number): void => void told.push([stage, share]);
    cleaned = cleanScan(scanned, watch);
    last = lastFromScan(cleaned.mesh, { name: "fine", scanned }, watch);
  }, 600_000);

  test("is thinned, and that is all that is said of it", () => {
    const count = triangleCount(scanned);
    expect(count).toBeGreaterThan(2_000_000);
    expect(triangleCount(cleaned.mesh)).toBeLessThan(260_000);
    expect(cleaned.repairs.map((r) => r.code)).toEqual(["mesh-thinned"]);
    const spaced = String(count).replace(/\B(?=(\d{3})+$)/g, " ");
    expect(explain(cleaned.repairs[0]!).replace(/\s/g, " ")).toContain(`thinned from ${spaced} to 250 000 triangles`);
    expect(last.findings.map((f) => f.code)).toEqual(["unit-read"]);
  });

  test("measures as the body it was cut from: lengths within 0.7 mm, girths within 1.5 mm", () => {
    const { side, measures } = exampleLast();
    expect(last.side).toBe(side);
    for (const k of lengthsMm) expect(Math.abs(last.measures[k] - measures[k]), k).toBeLessThan(0.7);
    for (const k of girthsMm) expect(Math.abs(last.measures[k] - measures[k]), k).toBeLessThan(1.5);
  });

  test("says how far it is at least every fifth of its cleaning, and never goes back", () => {
    const stages = told.map(([stage]) => stage).filter((stage, i, all) => stage !== all[i - 1]);
    expect(stages).toEqual(["clean", "pose", "feather line", "frame", "measures"]);
    for (const stage of stages) {
      const shares = told.filter(([s]) => s === stage).map(([, share]) => share);
      for (let i = 1; i < shares.length; i++) expect(shares[i], stage).toBeGreaterThanOrEqual(shares[i - 1]!);
      expect(shares.every((share) => share >= 0 && share <= 1), stage).toBe(true);
    }
    const cleaning = told.filter(([stage]) => stage === "clean").map(([, share]) => share);
    expect([cleaning[0], cleaning.at(-1)]).toEqual([0, 1]);
    for (let i = 1; i < cleaning.length; i++) expect(cleaning[i]! - cleaning[i - 1]!).toBeLessThanOrEqual(0.2 + 1e-12);
    // Thinning is the long part of it, and tells of itself.
    expect(cleaning.filter((share) => share > 0.5 && share < 0.7).length).toBeGreaterThanOrEqual(3);
  });

  test("is given up at whichever word of the watch the maker stops it, its last one too", () => {
    const { mesh } = exampleLast();
    let words = 0;
    lastFromScan(cleanScan(mesh, () => words++).mesh, { name: "made" }, () => words++);
    expect(words).toBeGreaterThan(10);
    for (const stopAt of [1, Math.ceil(words / 2), words]) {
      let heard = 0;
      const watch = (): void => {
        if (++heard === stopAt) throw new Cancelled();
      };
      expect(() => lastFromScan(cleanScan(mesh, watch).mesh, { name: "made" }, watch), `word ${stopAt}`).toThrow(Cancelled);
      expect(heard).toBe(stopAt);
    }
  });
});
