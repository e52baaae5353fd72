import { BufferAttribute, BufferGeometry, Vector3 } from "three";
import { MeshBVH } from "three-mesh-bvh";
import { describe, expect, test } from "vitest";
import { defaultJob } from "#job/default-job.ts";
import { Pipeline } from "#job/pipeline.ts";
import { mirrorLast } from "#last/mirror.ts";
import type { Last, Point3 } from "#last/last.ts";
import type { Lasted } from "#lasting/lasted.ts";
import { gaugesOf, markOf, marksOf, mirroredGauges, type GaugeInput, type Gauges } from "#lasting/gauges.ts";
import { drawingBoard, drawLines } from "#lines/draw.ts";
import { lineRulesFor } from "#lines/rules.ts";
import type { Piece } from "#pieces/piece.ts";
import { onLast } from "../support/on-last.ts";

const job = defaultJob();
// Every zone its own margin, so that none is taken for another. Invented.
const margins = { lastingToeMm: 22, lastingToeSidesMm: 19, lastingForepartMm: 16.5, lastingOuterWaistMm: 15, lastingInnerWaistMm: 20.5, lastingHeelMm: 17.5, liningLastingShorterMm: 3 };
const pair = onLast(new Pipeline().run({ ...job, pieces: margins, parts: { cut: "quarters" } }, new Map()));
const input: GaugeInput = { last: pair.last, lines: pair.lines, settings: pair.pieceSettings, shell: pair.shellSettings, beneath: pair.beneath, ...(pair.seams && { seams: pair.seams }) };
const gauges = gaugesOf(input);

/**
 * A tape measured by other means: the last's triangles are cut by a plane one by one, and the shortest way along the cuts from one point
 * to the other is looked for (E. W. Dijkstra, Numerische Mathematik 1, 1959).
 */
function tapeInPlane({ mesh: { positions: p, triangles: t } }: Last, from: Point3, to: Point3, normal: Point3): number {
  const over = (v: number) => normal[0] * (p[3 * v]! - from[0]) + normal[1] * (p[3 * v + 1]! - from[1]) + normal[2] * (p[3 * v + 2]! - from[2]);
  const next = new Map<string, Map<string, number>>();
  const cuts: { readonly keys: readonly [string, string]; readonly at: readonly [Point3, Point3] }[] = [];
  const link = (a: string, b: string, mm: number) => {
    for (const [one, two] of [[a, b], [b, a]] as const) next.set(one, (next.get(one) ?? new Map<string, number>()).set(two, mm));
  };
  for (let f = 0; f < t.length; f += 3) {
    const ends: { key: string; at: Point3 }[] = [];
    for (let k = 0; k < 3; k++) {
      const [a, b] = [t[f + k]!, t[f + ((k + 1) % 3)]!].sort((x, y) => x - y) as [number, number];
      const ha = over(a), hb = over(b);
      if (ha >= 0 === hb >= 0) continue;
      const s = ha / (ha - hb);
      ends.push({ key: `${a} ${b}`, at: [0, 1, 2].map((d) => p[3 * a + d]! + s * (p[3 * b + d]! - p[3 * a + d]!)) as unknown as Point3 });
    }
    if (ends.length !== 2) continue;
    cuts.push({ keys: [ends[0]!.key, ends[1]!.key], at: [ends[0]!.at, ends[1]!.at] });
    link(ends[0]!.key, ends[1]!.key, gap(ends[0]!.at, ends[1]!.at));
  }
  // Both points are tied to the ends of the cut that they lie on.
  const beside = (q: Point3) => cuts.reduce((a, b) => (aside(q, b.at) < aside(q, a.at) ? b : a));
  const [one, two] = [beside(from), beside(to)];
  if (one === two) return gap(from, to);
  for (const [name, q, cut] of [["from", from, one], ["to", to, two]] as const) cut.keys.forEach((key, i) => link(name, key, gap(q, cut.at[i]!)));
  const far = new Map([["from", 0]]), open = new Set(["from"]);
  while (open.size > 0) {
    const key = [...open].reduce((a, b) => (far.get(b)! < far.get(a)! ? b : a));
    open.delete(key);
    for (const [other, mm] of next.get(key)!) {
      if (far.get(key)! + mm >= (far.get(other) ?? Infinity)) continue;
      far.set(other, far.get(key)! + mm);
      open.add(other);
    }
  }
  return far.get("to") ?? Infinity;
}
/** Distance of a point from a straight piece. */
function aside(q: Point3, [a, b]: readonly [Point3, Point3]): number {
  const square = gap(a, b) ** 2;
  const s = square > 0 ? Math.max(0, Math.min(1, ((q[0] - a[0]) * (b[0] - a[0]) + (q[1] - a[1]) * (b[1] - a[1]) + (q[2] - a[2]) * (b[2] - a[2])) / square)) : 0;
  return gap(q, [a[0] + s * (b[0] - a[0]), a[1] + s * (b[1] - a[1]), a[2] + s * (b[2] - a[2])]);
}
const gap = (a: Point3, b: Point3): number => Math.hypot(a[0] - b[0], a[1] - b[1], a[2] - b[2]);

function surfaceOf({ mesh }: Last): MeshBVH {
  const geometry = new BufferGeometry();
  geometry.setAttribute("position", new BufferAttribute(Float64Array.from(mesh.positions), 3));
  geometry.setIndex(new BufferAttribute(Uint32Array.from(mesh.triangles), 1));
  return new MeshBVH(geometry);
}

describe("marks on a last", () => {
  const { seatPoint, toePoint, jointMedial, jointLateral, vampPoint } = pair.last.landmarks;

  test("all lie on the last's surface, by a closest-point search of another library", () => {
    const surface = surfaceOf(pair.last);
    for (const { key, at } of gauges.marks) {
      const found = surface.closestPointToPoint(new Vector3(...at))!;
      // Half a tenth: curves of the last are kept as points a millimetre apart, so their chords cut a hair below it.
      expect([key, found.distance < 0.05]).toEqual([key, true]);
    }
  });

  test.each(["throat", "puff"])("%s: the tape along the centre measured anew", (key) => {
    const { at, lengthMm } = markOf(gauges, key)!;
    expect(Math.abs(tapeInPlane(pair.last, toePoint, at, [0, 1, 0]) - lengthMm!)).toBeLessThan(0.05);
  });

  test.each(["back", "stiffener-top"])("%s: the tape up the back measured anew", (key) => {
    const { at, lengthMm } = markOf(gauges, key)!;
    expect(Math.abs(tapeInPlane(pair.last, seatPoint, at, [0, 1, 0]) - lengthMm!)).toBeLessThan(0.05);
  });

  test.each(["medial", "lateral"] as const)("%s: heights, square up from their feet, measured anew", (half) => {
    for (const { letter, foot, at, lengthMm } of marksOf(gauges, half)) {
      if (!"CDEF".includes(letter)) continue;
      expect(Math.abs(tapeInPlane(pair.last, foot!, at, [1, 0, 0]) - lengthMm!)).toBeLessThan(0.05);
    }
  });

  test.each([["medial", jointMedial], ["lateral", jointLateral]] as const)("%s: the joint line's tape measured anew, up to the topline", (half, joint) => {
    const { at, lengthMm } = markOf(gauges, `${half}-joint-line`)!;
    const u = [jointLateral[0] - jointMedial[0], jointLateral[1] - jointMedial[1], jointLateral[2] - jointMedial[2]] as const;
    const v = [vampPoint[0] - jointMedial[0], vampPoint[1] - jointMedial[1], vampPoint[2] - jointMedial[2]] as const;
    const normal: Point3 = [u[1] * v[2] - u[2] * v[1], u[2] * v[0] - u[0] * v[2], u[0] * v[1] - u[1] * v[0]];
    expect(Math.abs(tapeInPlane(pair.last, joint, at, normal) - lengthMm!)).toBeLessThan(0.05);
    const { points } = half === "medial" ? pair.lines.toplineMedial : pair.lines.toplineLateral;
    const apart = Array.from({ length: points.length / 3 }, (_, i) => gap([points[3 * i]!, points[3 * i + 1]!, points[3 * i + 2]!], at));
    expect(Math.min(...apart)).toBeLessThan(0.5);
  });

  test("with the throat behind the joint line its tape ends on the centre, and both halves meet there", () => {
    const behind = onLast(new Pipeline().run({ ...job, lines: { throatDepthMm: 100 } }, new Map()));
    const high = gaugesOf({ ...input, lines: behind.lines });
    const [a, b] = [markOf(high, "medial-joint-line")!, markOf(high, "lateral-joint-line")!];
    expect(gap(a.at, b.at)).toBeLessThan(0.01);
    expect(Math.abs(a.at[1])).toBeLessThan(1e-9);
    expect(gap(a.at, vampPoint)).toBeLessThan(0.5);
  });

  test("feet lie at their running length on the feather line, summed up point by point", () => {
    const { points, toeIndex } = pair.last.feather;
    const n = points.length / 3;
    const at = (i: number): Point3 => [points[3 * i]!, points[3 * i + 1]!, points[3 * i + 2]!];
    for (const half of ["medial", "lateral"] as const) {
      const ids = half === "medial" ? Array.from({ length: Math.ceil(toeIndex) }, (_, i) => i) : [0, ...Array.from({ length: n - 1 - Math.floor(toeIndex) }, (_, k) => n - 1 - k)];
      for (const { letter, alongMm, foot, at: mark } of marksOf(gauges, half)) {
        const q = foot ?? mark;
        let sum = 0, found = Infinity, least = Infinity;
        for (let k = 0; k + 1 < ids.length; k++) {
          const [a, b] = [at(ids[k]!), at(ids[k + 1]!)], size = gap(a, b);
          const s = Math.max(0, Math.min(1, ((q[0] - a[0]) * (b[0] - a[0]) + (q[1] - a[1]) * (b[1] - a[1]) + (q[2] - a[2]) * (b[2] - a[2])) / (size * size)));
          const off = gap(q, [a[0] + s * (b[0] - a[0]), a[1] + s * (b[1] - a[1]), a[2] + s * (b[2] - a[2])]);
          if (off < least) [least, found] = [off, sum + s * size];
          sum += size;
        }
        expect([letter, Math.abs(found - alongMm!) < 1e-6]).toEqual([letter, true]);
      }
    }
  });

  test("each half tells the foot of its side seam, where the panels part on the last", () => {
    const vamp = pair.grounds.find((g) => g.name === "vamp")!;
    for (const half of ["medial", "lateral"] as const) {
      const { at } = markOf(gauges, `${half}-seam`)!;
      let least = Infinity;
      for (let i = 0; i < vamp.positions.length; i += 3) least = Math.min(least, gap(at, [vamp.positions[i]!, vamp.positions[i + 1]!, vamp.positions[i + 2]!]));
      expect(least).toBeLessThan(0.6);
    }
    expect(gaugesOf({ ...input, seams: [] }).marks.some((m) => m.letter === "J")).toBe(false);
  });

  test("nothing is told of a stiffener or a puff that is not made", () => {
    const without = gaugesOf({ ...input, settings: { ...input.settings, toePuffMm: 0 }, shell: { ...input.shell, counterMm: 0 } });
    expect(without.marks.some((m) => "KLM".includes(m.letter))).toBe(false);
    expect(gauges.marks.filter((m) => "KLM".includes(m.letter))).toHaveLength(4);
  });

  // Handbook 2.2 and 4.6: the stiffener ends 6 to 10 mm below the topline; common practice.
  test("the stiffener's top lies as far below the back point as it was asked for", () => {
    expect(markOf(gauges, "back")!.lengthMm! - markOf(gauges, "stiffener-top")!.lengthMm!).toBeCloseTo(pair.shellSettings.counterBelowMm, 9);
  });
});

describe("the other last", () => {
  test("is the exact mirror: every point with y turned, no length changed, and twice mirrored is the same", () => {
    const other = mirroredGauges(gauges);
    expect(other.side).toBe("left");
    other.marks.forEach((mark, i) => {
      const own = gauges.marks[i]!;
      expect([mark.letter, mark.lengthMm, mark.alongMm]).toEqual([own.letter, own.lengthMm, own.alongMm]);
      expect([mark.at[0], mark.at[1] + 0, mark.at[2]]).toEqual([own.at[0], 0 - own.at[1], own.at[2]]);
    });
    expect(mirroredGauges(other)).toEqual(gauges);
  });

  test("says what is measured when the mirrored last is drawn on anew", () => {
    const last = mirrorLast(pair.last);
    const { lines } = drawLines(drawingBoard(last), lineRulesFor(last), pair.lines.settings);
    const anew = gaugesOf({ ...input, last, lines });
    mirroredGauges(gauges).marks.forEach((mark, i) => {
      const other = anew.marks[i]!;
      expect(other.key).toBe(mark.key);
      // The lines are drawn on a plane that is made anew from the mirrored triangles.
      expect([mark.key, gap(other.at, mark.at) < 0.1]).toEqual([mark.key, true]);
      expect([mark.key, Math.abs((other.lengthMm ?? 0) - (mark.lengthMm ?? 0)) < 0.1]).toEqual([mark.key, true]);
    });
  });
});

describe("margins at the drafts", () => {
  /** Distance of a point from the nearest straight piece of a line. */
  const off = (xy: Float64Array, closed: boolean, [x, y]: readonly [number, number]): number => {
    let least = Infinity;
    for (let i = 0; i < xy.length - (closed ? 0 : 2); i += 2) {
      const j = (i + 2) % xy.length;
      const [ax, ay, dx, dy] = [xy[i]!, xy[i + 1]!, xy[j]! - xy[i]!, xy[j + 1]! - xy[i + 1]!];
      const s = Math.max(0, Math.min(1, ((x - ax) * dx + (y - ay) * dy) / (dx * dx + dy * dy || 1)));
      least = Math.min(least, Math.hypot(x - ax - s * dx, y - ay - s * dy));
    }
    return least;
  };
  const upper = pair.pieces.filter((p) => p.side === "right" && p.material === "upper leather");
  const gripOf = (number: number): { piece: Piece; middle: readonly [number, number] } | undefined => {
    for (const piece of upper)
      for (const mark of piece.marks) {
        if (mark.kind !== "line" || mark.as !== "grip" || !mark.name.startsWith(`draft ${number},`)) continue;
        const xy = mark.line.xy;
        return { piece, middle: [(xy[0]! + xy[2]!) / 2, (xy[1]! + xy[3]!) / 2] };
      }
    return undefined;
  };

  test("are those that the cut pieces have at the grips of the same number", () => {
    for (const { number, name, upperMm } of gauges.drafts) {
      const grip = gripOf(number);
      // At the back a closed seam runs through the very place.
      expect([name, grip !== undefined]).toEqual([name, true]);
      const { piece, middle } = grip!;
      // The grip lies half-way out: as far from the cut edge as from the feather line.
      const feather = piece.marks.filter((m) => m.kind === "line" && m.use === "net").map((m) => (m.kind === "line" ? off(m.line.xy, false, middle) : Infinity));
      const marginMm = off(piece.outline.xy, true, middle) + Math.min(...feather);
      // Near a seam the grip makes way by up to 16 mm, on which the margin goes over into the next zone's.
      const leeway = number === 4 ? 0.5 : 0.02;
      expect([name, Math.abs(marginMm - upperMm) < leeway, marginMm]).toEqual([name, true, marginMm]);
    }
  });

  test("each zone's own, the lining's shorter by as much as it is cut shorter", () => {
    const by = Object.fromEntries(gauges.drafts.map((d) => [d.number, d.upperMm]));
    expect(by).toEqual({ 1: 22, 2: 19, 3: 19, 4: 17.5, 5: 17.5, 6: 17.5, 7: 16.5, 8: 16.5, 9: 20.5, 10: 15 });
    for (const d of gauges.drafts) expect(d.liningMm).toBe(d.upperMm - 3);
    // On the cut vamp lining, from its own feather line to its edge, foremost.
    const vamp = pair.pieces.find((p) => p.name === "vamp lining" && p.side === "right")!;
    const foremost = (xy: Float64Array) => Math.max(...xy.filter((_, i) => i % 2 === 0));
    const feather = Math.max(...vamp.marks.flatMap((m) => (m.kind === "line" && m.use === "net" ? [foremost(m.line.xy)] : [])));
    expect(Math.abs(foremost(vamp.outline.xy) - feather - gauges.drafts[0]!.liningMm)).toBeLessThan(0.05);
  });
});

test("what was foretold stands beside what is asked for, with its band where there is one", () => {
  const lasted = {
    ends: { throatDepthMm: 73, backHeightMm: 54, sideMm: { medial: [46, 41, 42], lateral: [45, 38, 39] }, lowestMm: { medial: 40, lateral: 36 } },
    drafts: [{ number: 7, marginMm: 15.25, word: "firm" }],
  } as unknown as Lasted;
  const alone: Gauges = gaugesOf({ ...input, foretold: { lasted } });
  expect(markOf(alone, "throat")!.foretold).toEqual({ predicted: 73 });
  expect(markOf(alone, "lateral-quarter-3")!.foretold).toEqual({ predicted: 39 });
  expect(alone.drafts.filter((d) => d.foretold).map((d) => [d.number, d.foretold])).toEqual([[7, { marginMm: 15.25, word: "firm" }]]);
  const band = (target: number) => ({ target, predicted: target + 0.5, low: target - 1, high: target + 2 });
  const banded = { throatDepthMm: band(72), backHeightMm: band(55), innerHeightMm: band(40), outerHeightMm: band(37) };
  const both = gaugesOf({ ...input, foretold: { lasted, banded } });
  expect(markOf(both, "throat")!.foretold).toEqual({ predicted: 72.5, low: 71, high: 74 });
  expect(markOf(both, "lateral-lowest")!.foretold).toEqual({ predicted: 37.5, low: 36, high: 39 });
  expect(gauges.marks.some((m) => m.foretold)).toBe(false);
});
