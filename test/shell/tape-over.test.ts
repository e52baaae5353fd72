// A tape over a round place reads more by the angle that it turns through times how far it lies off: an arc's length (school geometry).
import { expect, test } from "vitest";
import type { BeneathRow } from "#shell/girths.ts";
import type { Shell } from "#shell/shell.ts";
import { withTape } from "#shell/tape-over.ts";

const columns = 3, rows = 200, turn = 1.2;
const id = (column: number, row: number): number => column * (rows + 1) + row;
const column = (c: number): Uint32Array => Uint32Array.from({ length: rows + 1 }, (_, row) => id(c, row));
const along = (row: number): Uint32Array => Uint32Array.from({ length: columns + 1 }, (_, c) => id(c, row));

/** A part of a cylinder about the x axis: from its lower edge the flank turns inward over the top; its y lies above 0. */
function flank(radius: number): Shell {
  const positions: number[] = [], triangles: number[] = [];
  for (let c = 0; c <= columns; c++) for (let row = 0; row <= rows; row++) positions.push(10 * c, radius * Math.cos((turn * row) / rows), radius * Math.sin((turn * row) / rows));
  for (let c = 0; c < columns; c++) for (let row = 0; row < rows; row++) triangles.push(id(c, row), id(c + 1, row), id(c + 1, row + 1), id(c, row), id(c + 1, row + 1), id(c, row + 1));
  const edges = { featherMedial: along(0), featherLateral: along(0), toplineMedial: along(rows), toplineLateral: along(rows), backMedial: column(0), backLateral: column(0), centre: column(columns) };
  return { mesh: { positions: Float64Array.from(positions), triangles: Uint32Array.from(triangles) }, edges };
}

test("a tape lies on the outside of the upper: it reads more by the turn times all that lies beneath it", () => {
  const bare: readonly BeneathRow[] = [{ key: "centre", onLastMm: 0, overMm: 0 }, { key: "back", onLastMm: 0, overMm: 0 }, { key: "joint", half: "medial", onLastMm: 0, overMm: 0 }];
  // 2 mm up to the middle of an upper of 1.2 mm.
  const taped = withTape(bare, { side: "right" }, flank(30), flank(32), 1.2);
  const more = (key: BeneathRow["key"]): number => Math.max(...taped.filter((row) => row.key === key).map(({ tapeMoreMm }) => tapeMoreMm!));
  for (const key of ["centre", "back", "lowest"] as const) expect(more(key)).toBeCloseTo(turn * 2.6, 3);
  const lowest = taped.filter(({ key }) => key === "lowest");
  expect(lowest.map(({ half }) => half)).toEqual(["medial", "lateral"]);
  expect(Math.max(...lowest.map(({ onLastMm }) => onLastMm))).toBeCloseTo(turn * 30, 2);
  expect(taped[2]).toEqual(bare[2]);
});
