import { describe, expect, it } from "vitest";
import { diskOf } from "#flatten/disk.ts";
import { flatten } from "#flatten/flatten.ts";
import { framesOf } from "#flatten/frames.ts";
import { LeatherSheet } from "#lasting/forward/leather-sheet.ts";
import { addLoadsInto, outwardLoads, RimTriangles } from "#lasting/inverse/edge-loads.ts";
import { InverseSheet } from "#lasting/inverse/inverse-sheet.ts";
import { groundOf } from "#lasting/inverse/sheet-forces.ts";
import { ToeLaw } from "#leather/toe-law.ts";
import { Ground } from "#wrap/ground.ts";
import { capMesh } from "../support/formula-surfaces.ts";

const law = new ToeLaw({ along: 40, across: 20, bias: 18, poisson: 0.4, toe: 0.02, early: 0.2 });

describe("a sheet found by the inverse, pulled over again", () => {
  // The pull-over shares the law and the idea of linear triangles with the inverse, and nothing else: its unknowns are places in space, its
  // contact bears from one side only. A cap of 35 degrees under firm, uneven pulls bears everywhere.
  it.each([true, false])("comes back to the shape it was found for, within 0.02 mm (forces followed: %s)", (exact) => {
    const R = 40, rings = 8, mesh = capMesh(R, 35, rings), { positions, triangles } = mesh, first = 1 + 3 * rings * (rings - 1);
    const rim = Uint32Array.from({ length: 6 * rings + 1 }, (_, k) => first + (k % (6 * rings)));
    const perMm = Float64Array.from(rim, (_, k) => 2 + 0.4 * Math.cos((4 * Math.PI * k) / (6 * rings)));
    const found = new InverseSheet(positions.length / 3, triangles).run({ positions, start: flatten(mesh).uv, law, exact, frame: { from: 0, origin: first }, pulls: [{ vertices: rim, perMm }], toleranceMm: 1e-5 });
    expect(found.settled).toBe(true);

    const sheet = new LeatherSheet({ sheet: { triangles, flat: found.uv }, law, bend: 0, form: new Ground(mesh) }, positions);
    for (const v of [0, first]) sheet.tack([v], { stiffness: 50, at: positions.slice(3 * v, 3 * v + 3) });
    const disk = diskOf(positions.length / 3, triangles), frames = framesOf(positions, disk.triangles), ground = groundOf(positions, disk.triangles, frames, disk.turned ? -1 : 1);
    addLoadsInto(sheet.load, outwardLoads([{ vertices: rim, perMm }], positions, new RimTriangles(disk), disk.triangles, ground, frames));
    expect(sheet.settle().settled).toBe(true);
    sheet.positions().forEach((x, i) => expect(Math.abs(x - positions[i]!)).toBeLessThan(0.02));
  });
});
