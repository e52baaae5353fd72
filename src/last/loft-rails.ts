import { Path } from "./loft-path.ts";
import type { LoftShape } from "./loft-shape.ts";

export type LoftSide = 1 | -1;

/**
 * Where the rows of the mesh begin and end. Row i runs from place i of the feather line up to place i of the top, the toe being
 * row 0 and the back row `rows`; the first `ridgeRows` rows end on the ridge and meet the other side's there.
 * Places: x of the form, toe to heel, `rows + 1` each, equal steps on the surface.
 */
export interface Rails {
  readonly rows: number;
  readonly ridgeRows: number;
  readonly feather: Readonly<Record<LoftSide, Float64Array>>;
  readonly top: Readonly<Record<LoftSide, Float64Array>>;
}

/** @param edge wanted edge length, mm */
export function layRails(shape: LoftShape, edge: number): Rails {
  const length = shape.numbers.lengthMm;
  const front = shape.combFront;
  const featherX = (q: number): number => length * (1 - eased(q));
  const ridgeX = (q: number): number => length - (length - front) * q * q;
  const combX = (q: number): number => front * (1 - eased(q));
  const feather = (side: LoftSide): Path => wallPath(shape, featherX, side, () => 0);
  const comb = (side: LoftSide): Path => wallPath(shape, combX, side, (column) => shape.top(column));
  const ridge = wallPath(shape, ridgeX, 1, (column) => column.ridge);
  const sides = { [1]: { feather: feather(1), comb: comb(1) }, [-1]: { feather: feather(-1), comb: comb(-1) } } as const;

  const rows = Math.round((sides[1].feather.length + sides[-1].feather.length) / 2 / edge);
  const ridgeRows = Math.round((rows * ridge.length) / (ridge.length + (sides[1].comb.length + sides[-1].comb.length) / 2));
  const along = (path: Path, steps: number, x: (q: number) => number): Float64Array => path.evenShares(steps).map(x);
  const top = (side: LoftSide): Float64Array => {
    const out = new Float64Array(rows + 1);
    out.set(along(ridge, ridgeRows, ridgeX));
    out.set(along(sides[side].comb, rows - ridgeRows, combX), ridgeRows);
    return out;
  };
  return {
    rows,
    ridgeRows,
    feather: { [1]: along(sides[1].feather, rows, featherX), [-1]: along(sides[-1].feather, rows, featherX) },
    top: { [1]: top(1), [-1]: top(-1) },
  };
}

function wallPath(shape: LoftShape, x: (q: number) => number, side: LoftSide, w: (column: ReturnType<LoftShape["column"]>) => number): Path {
  return new Path((out, at, q) => {
    const column = shape.column(x(q));
    shape.wallInto(out, at, column, w(column), side);
  }, 300);
}

/** 0 … 1 with level ends, so that steps shrink where a rounded end turns. */
const eased = (q: number): number => q * q * (3 - 2 * q);
