// Truth: the synthetic lasts of ../shared/data/lasts (CC0). Here their clean scans are torn to single triangles before they are cleaned.
import { describe, expect, test } from "vitest";
import { unwatched } from "#base/watch.ts";
import { lastFromScan } from "#last/from-scan.ts";
import { cleanScan } from "#mesh/clean.ts";
import type { Mesh } from "#mesh/mesh.ts";
import { readScan } from "#mesh/read.ts";
import { asInTruth } from "../support/against-truth.ts";
import { expectNear } from "../support/near-truth.ts";
import { hasShared, sharedBytes } from "../support/shared.ts";

/** Every triangle for itself, its corners moved by up to 0.15 mm each way, three of ten inside out. */
function torn({ positions: p, triangles }: Mesh): Mesh {
  let s = 5;
  const next = (): number => (s = (Math.imul(s, 1664525) + 1013904223) >>> 0) / 2 ** 32;
  const positions = Float64Array.from({ length: triangles.length * 3 }, (_, i) => p[3 * triangles[(i - (i % 3)) / 3]! + (i % 3)]! + 0.15 * (2 * next() - 1));
  const faces = Uint32Array.from(triangles, (_, i) => i);
  for (let i = 0; i < faces.length; i += 3) if (next() < 0.3) [faces[i], faces[i + 1]] = [faces[i + 1]!, faces[i]!];
  return { positions, triangles: faces };
}

describe.skipIf(!hasShared)("a last in 62 876 loose triangles", () => {
  test("is made anew and measured within the limits of a scan", { timeout: 240_000 }, () => {
    const name = "last_eu38_round_heel20";
    const { mesh, repairs } = cleanScan(torn(readScan(name, sharedBytes("lasts", `${name}.stl`)).mesh), unwatched);
    expect(repairs.map((r) => r.code)).toEqual(["made-anew"]);
    const last = lastFromScan(mesh, { name }, unwatched);
    expectNear(last, name, asInTruth);
  });
});
