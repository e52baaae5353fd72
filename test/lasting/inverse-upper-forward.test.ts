// The whole upper of the example, found flat by the inverse and brought to rest by the pull-over's mechanics, which share the law with it and
// nothing else: unknowns are places in space, contact bears from one side only. All that the inverse counts on acts on it here: pulls, what it
// sticks to (as soft springs), tape, and hands that press where the equation says that the last would have to draw the leather down.
import { describe, expect, it } from "vitest";
import type { Law } from "#leather/law.ts";
import type { KnownLeather } from "#leather/leather.ts";
import { leatherFrom } from "#leather/leather-from.ts";
import { diskOf } from "#flatten/disk.ts";
import { framesOf } from "#flatten/frames.ts";
import { fabricOf } from "#lasting/fabric.ts";
import { LeatherSheet } from "#lasting/forward/leather-sheet.ts";
import { groundOf as lastGroundOf } from "#lasting/ground-of.ts";
import { addLoadsInto, outwardLoads, RimTriangles } from "#lasting/inverse/edge-loads.ts";
import { layForLeather } from "#lasting/inverse/lay-for-leather.ts";
import { groundOf } from "#lasting/inverse/sheet-forces.ts";
import { pullsAlong } from "#lasting/pulls.ts";
import { lastingFrom } from "#lasting/settings.ts";
import { wholeUpper } from "#lasting/upper.ts";
import { halves } from "#lines/feather.ts";
import { toplineOf } from "#shell/tension.ts";
import { Ground } from "#wrap/ground.ts";
import { sheetOf } from "#wrap/sheet.ts";
import { exampleTable } from "../support/ready-to-pull.ts";

const settings = lastingFrom(), table = exampleTable(2500), { flat: { shell, uv: laid } } = table, { mesh: { positions, triangles }, edges } = shell;
/** How firmly a place sticks to where it was laid, N/mm³, as docs/method/inverse.md has it: the leather's stiffness at 3 % over the square of 1/(1/80 mm + friction/40 mm). */
function stickPerMm3(law: Law): number {
  const out = new Float64Array(9);
  law.into(out, 0.03, 0.03, 0);
  return 0.5 * (out[3]! + out[4]!) * (1 / 80 + settings.friction / 40) ** 2;
}

/** How far each vertex ends from where it was asked to lie, mm; and the greatest height over the last. */
function pulledAgain(known: KnownLeather, hands: boolean): { readonly off: Float64Array; readonly highest: number } {
  const fabric = fabricOf(leatherFrom({ known }, "upper", 0.9), leatherFrom(undefined, "lining", 0.8), settings, "taped"), pulls = pullsAlong(table.onLast, table.last, settings);
  const found = layForLeather({ over: shell }, laid, fabric, pulls, { friction: settings.friction });
  expect(found.settled).toBe(true);
  const form = new Ground(lastGroundOf(wholeUpper(table.flat), table.last).over);
  const topline = Uint32Array.from(halves.flatMap((half) => { const ids = toplineOf(shell, half); return Array.from(ids.subarray(1)).flatMap((v, k) => [ids[k]!, v]); }));
  const sheet = new LeatherSheet({ sheet: { triangles, flat: found.uv }, law: fabric.law, bend: 0, bars: { pairs: topline, stiffness: fabric.tapeN }, form, press: hands ? 0.1 : 0 }, positions);
  const disk = diskOf(positions.length / 3, triangles), frames = framesOf(positions, disk.triangles), ground = groundOf(positions, disk.triangles, frames, disk.turned ? -1 : 1);
  const rows = [{ vertices: edges.featherMedial, perMm: pulls.perMm.medial }, { vertices: edges.featherLateral, perMm: pulls.perMm.lateral }];
  addLoadsInto(sheet.load, outwardLoads(rows, positions, new RimTriangles(disk), disk.triangles, ground, frames));
  const stick = stickPerMm3(fabric.law), { areas } = sheetOf({ triangles, flat: found.uv });
  for (let v = 0; v < positions.length / 3; v++) {
    const pressN = Math.min(0, found.pressure[v]! * ground.cells[v]!);
    if (hands) for (let d = 0; d < 3; d++) sheet.load[3 * v + d]! += pressN * ground.normals[3 * v + d]!;
    const softNPerMm = stick * areas[v]!;
    // A spring that holds with just what holds the vertex where it is asked to lie.
    sheet.tack([v], { stiffness: softNPerMm, at: Float64Array.from([0, 1, 2], (d) => positions[3 * v + d]! + found.held[3 * v + d]! / softNPerMm) });
  }
  expect(sheet.settle().settled).toBe(true);
  const x = sheet.positions(), off = Float64Array.from({ length: positions.length / 3 }, (_, v) => Math.sqrt([0, 1, 2].reduce((sum, d) => sum + (x[3 * v + d]! - positions[3 * v + d]!) ** 2, 0)));
  return { off, highest: sheet.heights().reduce((a, b) => Math.max(a, b), 0) };
}

describe("the upper found for a leather, pulled over again", () => {
  it.each(["goat", "nappa"] as const)("comes back within 0.3 mm everywhere: %s", (known) => {
    const { off, highest } = pulledAgain(known, true);
    expect(off.reduce((a, b) => Math.max(a, b), 0)).toBeLessThan(0.3);
    expect(highest).toBeLessThan(0.01);
  });

  it("lifts off hollows and the heel's edge where no hand presses, since a last cannot draw", () => {
    expect(pulledAgain("goat", false).highest).toBeGreaterThan(1);
  });
});
