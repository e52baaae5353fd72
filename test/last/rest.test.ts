// How a body comes to rest. The box is a geometric fixture; the foot template of ../shared/data/feet (see its README) lies rolled in its file.
import { describe, expect, test } from "vitest";
import { unwatched } from "#base/watch.ts";
import { lastFromScan } from "#last/from-scan.ts";
import { restingUp } from "#last/rest.ts";
import { unit } from "#last/vector.ts";
import { cleanScan } from "#mesh/clean.ts";
import type { Mesh } from "#mesh/mesh.ts";
import { readScan } from "#mesh/read.ts";
import { cleanedScan } from "../support/scans.ts";
import { hasShared } from "../support/shared.ts";
import { binaryStl, box } from "../support/solids.ts";

const block: Mesh = cleanScan(readScan("box.stl", binaryStl(box(250, 90, 60, 12))).mesh, unwatched).mesh;

test.each([
  ["leaning a little, falls back on its broad side", [0.2, -0.15, 1], [0, 0, 1]],
  ["leaning past its edge, falls over on the next side", [0, 2, 1], [0, 1, 0]],
  ["lying still, stays", [0, 0, -1], [0, 0, -1]],
] as const)("a block %s", (_, from, to) => {
  const up = restingUp(block, unit(from));
  up.forEach((v, k) => expect(v).toBeCloseTo(to[k]!, 2));
});

describe.skipIf(!hasShared)("a foot", () => {
  test("of which the file lies rolled stands on heel and both balls", () => {
    const { mesh } = lastFromScan(cleanedScan("feet", "find_template_foot.obj"), { name: "foot" }, unwatched);
    const { positions: p } = mesh;
    let length = 0;
    for (let i = 0; i < p.length; i += 3) length = Math.max(length, p[i]!);
    const lowest = (from: number, to: number, side: (y: number) => boolean): number => {
      let low = Infinity;
      for (let i = 0; i < p.length; i += 3) if (p[i]! > from * length && p[i]! < to * length && side(p[i + 1]!)) low = Math.min(low, p[i + 2]!);
      return low;
    };
    expect(lowest(-1, 0.3, () => true)).toBeLessThan(1);
    // In the file one ball lies 10 mm higher than the other.
    expect(lowest(0.55, 0.8, (y) => y > 8)).toBeLessThan(2.5);
    expect(lowest(0.55, 0.8, (y) => y < -8)).toBeLessThan(2.5);
  });
});
