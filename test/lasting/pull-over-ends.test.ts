import { expect, test } from "vitest";
import { askedEnds, EndsGauge } from "#lasting/ends.ts";
import { groundOf } from "#lasting/ground-of.ts";
import type { Ends } from "#lasting/lasted.ts";
import { wholeUpper } from "#lasting/upper.ts";
import { drawLines } from "#lines/draw.ts";
import { lineRulesFor, settle } from "#lines/rules.ts";
import { cutShell } from "#shell/cut.ts";
import { beneathFrom, layBeneath } from "#shell/beneath.ts";
import { shellRulesFor, shellSettingsFrom } from "#shell/rules.ts";
import { exampleTable } from "../support/ready-to-pull.ts";

const table = exampleTable();
const cut = wholeUpper(table.flat);
const gauge = new EndsGauge(table.last, table.drawn.lines, cut, groundOf(cut, table.last));

const numbers = ({ throatDepthMm, backHeightMm, sideMm, lowestMm }: Ends): number[] => [throatDepthMm, backHeightMm, ...sideMm.medial, ...sideMm.lateral, lowestMm.medial, lowestMm.lateral];

test("a topline that lies just on the drawn line measures just what is asked, over what lies beneath and on the last itself", () => {
  const asked = askedEnds(table.drawn.lines);
  const over = gauge.measure(cut.over.mesh.positions);
  numbers(over.ends).forEach((mm, k) => expect(Math.abs(mm - numbers(asked)[k]!)).toBeLessThan(0.02));
  expect(Math.abs(over.asideMm)).toBeLessThan(1e-9);
  expect(asked.throatDepthMm).toBe(table.drawn.lines.settings.throatDepthMm);
});

test("a topline that lies on another line measures that one", () => {
  const { board, last, onLast, drawn } = table, { settings } = drawn.lines;
  const other = drawLines(board, lineRulesFor(last), settle(lineRulesFor(last), { ...settings, throatDepthMm: settings.throatDepthMm - 3, backHeightMm: settings.backHeightMm + 1.5, sideHeightMedialMm: settings.sideHeightMedialMm - 2, sideHeightLateralMm: settings.sideHeightLateralMm + 1 }));
  // Cut like the first, so that its vertices are the same ones, moved.
  const moved = cutShell(board, other, onLast.triangles, onLast);
  expect(moved.mesh.triangles).toEqual(onLast.mesh.triangles);
  const { over } = layBeneath(moved, last, beneathFrom(table.seams, shellSettingsFrom(shellRulesFor(last))));
  const { ends } = gauge.measure(over.mesh.positions), wanted = askedEnds(other.lines);
  expect(Math.abs(ends.throatDepthMm - wanted.throatDepthMm)).toBeLessThan(0.1);
  expect(Math.abs(ends.backHeightMm - wanted.backHeightMm)).toBeLessThan(0.1);
  for (const half of ["medial", "lateral"] as const) expect(Math.abs(ends.lowestMm[half] - wanted.lowestMm[half])).toBeLessThan(0.15);
});

test("a throat that is pushed aside is told, toward the side it went to", () => {
  const positions = cut.over.mesh.positions.slice();
  for (let v = 0; v < positions.length / 3; v++) positions[3 * v + 1]! += 1.5;
  expect(gauge.measure(positions).asideMm).toBeGreaterThan(1);
});
