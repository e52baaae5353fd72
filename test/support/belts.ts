import { LeatherSheet } from "#lasting/forward/leather-sheet.ts";
import type { Law } from "#leather/law.ts";
import type { SheetInput } from "#wrap/sheet.ts";
import { Ground } from "#wrap/ground.ts";
import { gridMesh } from "./formula-surfaces.ts";
import { cylinder, flatGrid } from "./sheets-on-forms.ts";

/** A strip laid round an upright cylinder with a straight tail at each end. */
export interface Belt {
  readonly radius: number;
  readonly sheet: SheetInput;
  readonly start: Float64Array;
  /** Vertices of the two ends, bottom to top. */
  readonly ends: readonly [readonly number[], readonly number[]];
  /** Which way the far end is dragged. */
  readonly direction: readonly number[];
}

export function beltRound({ radius, degrees, tail, width, edge }: { radius: number; degrees: number; tail: number; width: number; edge: number }): Belt {
  const angle = (degrees * Math.PI) / 180, length = angle * radius + 2 * tail;
  const grid = { columns: Math.round(length / edge), rows: 3 };
  const flat = flatGrid((s, t) => [length * s, width * t], grid);
  const place = (s: number): readonly [number, number] => {
    if (s < 0) return [radius, s];
    const turn = Math.min(s / radius, angle), over = Math.max(0, s - angle * radius);
    return [radius * Math.cos(turn) - over * Math.sin(turn), radius * Math.sin(turn) + over * Math.cos(turn)];
  };
  const start = Float64Array.from({ length: (flat.length / 2) * 3 }, (_, k) => {
    const v = Math.floor(k / 3);
    return k % 3 === 2 ? flat[2 * v + 1]! : place(flat[2 * v]! - tail)[k % 3]!;
  });
  const end = (column: number): readonly number[] => [0, 1, 2, 3].map((r) => r * (grid.columns + 1) + column);
  return { radius, sheet: { triangles: gridMesh((s, t) => [s, t, 0], grid.columns, grid.rows).triangles, flat }, start, ends: [end(0), end(grid.columns)], direction: [-Math.sin(angle), Math.cos(angle), 0] };
}

/** Drags the far end of a belt while the near one is held back by a dead load. @returns both forces, N */
export function dragged(belt: Belt, { law, friction, load, way, increments }: { law: Law; friction: number; load: number; way: number; increments: number }) {
  const sheet = new LeatherSheet({ sheet: belt.sheet, law, bend: 0, form: new Ground(cylinder(belt.radius, -20, 40)), friction }, belt.start);
  belt.ends[0].forEach((v, r) => sheet.load.set([0, (-load * (r % 3 === 0 ? 1 : 2)) / 6, 0], 3 * v));
  let settled = true;
  for (let k = 0; k <= increments; k++) {
    sheet.tack(belt.ends[1], { at: Float64Array.from(belt.ends[1].flatMap((v) => [0, 1, 2].map((d) => belt.start[3 * v + d]! + ((way * k) / increments) * belt.direction[d]!))) });
    sheet.begin();
    settled = sheet.settle({ residualN: 0.002 }).settled && settled;
  }
  const forces = sheet.tackForces();
  const pulled = belt.ends[1].reduce((sum, v) => sum + [0, 1, 2].reduce((dot, d) => dot + forces[3 * v + d]! * belt.direction[d]!, 0), 0);
  return { pulled, held: load, lowest: Math.min(...sheet.heights()), settled };
}
