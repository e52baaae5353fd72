import type { ShellEdges } from "#shell/shell.ts";
import type { CutShell } from "#shell/cut.ts";

/** Point at share `s` round (−1 outer bank of the back, 0 centre, 1 inner bank) and `t` up (0 feather, 1 topline), mm. */
export type Round = (s: number, t: number) => readonly [number, number, number];

/** A tube stood up: closed round, so that both banks of the back lie in one place. Unrolled it is 2πr by h. */
export const tube = (radius: number, height: number): Round => (s, t) => [radius * Math.cos(Math.PI * s), radius * Math.sin(Math.PI * s), height * t];

/** A cone cut off above: slant height from `low` to `high` below its point, half angle by its sine. Unrolled it is a sector of 2π · sine. */
export const coneBand = (low: number, high: number, sine: number): Round => (s, t) => {
  const slant = low + t * (high - low);
  return [slant * sine * Math.cos(Math.PI * s), slant * sine * Math.sin(Math.PI * s), -slant * Math.sqrt(1 - sine * sine)];
};

/** A shell in the shape of a band, `half` columns a half and `rows` rows; its drawing plane is (s · wide, t · high). */
export function bandShell(at: Round, half: number, rows: number, { wide, high }: { readonly wide: number; readonly high: number }): CutShell {
  const columns = 2 * half;
  const id = (c: number, r: number): number => r * (columns + 1) + c;
  const positions: number[] = [], plane: number[] = [], triangles: number[] = [];
  for (let r = 0; r <= rows; r++)
    for (let c = 0; c <= columns; c++) {
      // Both banks to the last bit in one place.
      const s = c === 0 ? 1 : c / half - 1;
      positions.push(...at(s, r / rows));
      plane.push((c / half - 1) * wide, (r / rows) * high);
    }
  for (let r = 0; r < rows; r++)
    for (let c = 0; c < columns; c++) {
      const [a, b, d, e] = [id(c, r), id(c + 1, r), id(c + 1, r + 1), id(c, r + 1)];
      if ((r + c) % 2 === 0) triangles.push(a, b, d, a, d, e);
      else triangles.push(a, b, e, b, d, e);
    }
  const row = (n: number, of: (k: number) => number): Uint32Array => Uint32Array.from({ length: n + 1 }, (_, k) => of(k));
  const edges: ShellEdges = {
    featherMedial: row(half, (k) => id(columns - k, 0)),
    featherLateral: row(half, (k) => id(k, 0)),
    backMedial: row(rows, (k) => id(columns, k)),
    backLateral: row(rows, (k) => id(0, k)),
    toplineMedial: row(half, (k) => id(columns - k, rows)),
    toplineLateral: row(half, (k) => id(k, rows)),
    centre: row(rows, (k) => id(half, k)),
  };
  return { mesh: { positions: Float64Array.from(positions), triangles: Uint32Array.from(triangles) }, edges, plane: Float64Array.from(plane), triangles: triangles.length / 3 };
}

