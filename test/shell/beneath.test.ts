import { beforeAll, describe, expect, test } from "vitest";
import type { Last, Point3 } from "#last/last.ts";
import { planeSections } from "#mesh/section.ts";
import { lackingOf } from "#pieces/lining/own.ts";
import { netUpper } from "#pieces/net-upper.ts";
import { pieceRulesFor, pieceSettingsFrom } from "#pieces/rules.ts";
import { drawingBoard, drawLines } from "#lines/draw.ts";
import type { Lines } from "#lines/lines.ts";
import { lineRulesFor, settle } from "#lines/rules.ts";
import { beneathFrom, heelLonger, layBeneath, type Beneath, type BeneathSettings } from "#shell/beneath.ts";
import { cutShell } from "#shell/cut.ts";
import { edgeLength } from "#shell/edge-length.ts";
import { EdgeSearch } from "#shell/edge-search.ts";
import type { BeneathRow } from "#shell/girths.ts";
import { layFlat, layFree, layLining } from "#shell/lay-flat.ts";
import { shellRulesFor, shellSettingsFrom } from "#shell/rules.ts";
import type { Shell } from "#shell/shell.ts";
import { toplineAsked } from "#shell/tension.ts";
import { demoBoard } from "../support/demo-shell.ts";
import { hasShared } from "../support/shared.ts";
import { truthLast } from "../support/truth-last.ts";

interface Set {
  readonly last: Last;
  readonly lines: Lines;
  readonly onLast: Shell;
  readonly settings: BeneathSettings;
}

function setOf(last: Last, board = drawingBoard(last)): Set {
  const rules = lineRulesFor(last);
  const drawn = drawLines(board, rules, settle(rules, {}));
  return { last, lines: drawn.lines, onLast: cutShell(board, drawn, 4000), settings: beneathFrom(pieceSettingsFrom(pieceRulesFor(last)), shellSettingsFrom(shellRulesFor(last))) };
}

const adds = (rows: readonly BeneathRow[], key: BeneathRow["key"]): number => rows.filter((r) => r.key === key).reduce((sum, r) => sum + r.overMm - r.onLastMm, 0);

describe("what lies beneath the upper of the example last", () => {
  let set: Set, beneath: Beneath;
  const vertex = (v: number): Point3 => [0, 1, 2].map((d) => set.onLast.mesh.positions[3 * v + d]!) as unknown as Point3;
  const lay = (change: Partial<BeneathSettings>) => layBeneath(set.onLast, set.last, { ...set.settings, ...change });
  const bare = { counterMm: 0, toePuffMm: 0, upperThicknessMm: 0 };

  beforeAll(() => {
    const { last, board } = demoBoard();
    set = setOf(last, board);
    beneath = lay({});
  });

  test("is lining and half the upper everywhere, and no more than that along topline and feather line, where all is pared to nothing", () => {
    const { liningThicknessMm, upperThicknessMm } = set.settings;
    const { edges } = set.onLast;
    const least = liningThicknessMm + upperThicknessMm / 2;
    expect(Math.min(...beneath.heightMm)).toBeCloseTo(least, 12);
    for (const ids of [edges.toplineMedial, edges.toplineLateral, edges.featherMedial, edges.featherLateral]) for (const v of ids) expect(beneath.heightMm[v]!).toBeCloseTo(least, 12);
  });

  test("is the side lining besides where there is one: whole down at the joint, nothing above its height, at the seat and under the toe", () => {
    const bare = lay({}).heightMm, side = lay({ sideLiningMm: 0.6 }).heightMm;
    const { sideLiningHeightMm } = set.settings;
    const p = set.onLast.mesh.positions, { edges } = set.onLast;
    const search = { inner: new EdgeSearch(p, edges.featherMedial), outer: new EdgeSearch(p, edges.featherLateral) };
    const seen = { whole: 0, above: 0, ends: 0 };
    side.forEach((mm, v) => {
      const at = vertex(v), more = mm - bare[v]!;
      const foot = (at[1] >= 0 ? search.inner : search.outer).nearest(at);
      expect(more).toBeGreaterThanOrEqual(-1e-12);
      expect(more).toBeLessThanOrEqual(0.6 + 1e-12);
      if (foot.distance > sideLiningHeightMm || at[0] < 30 || at[0] > 230) {
        seen[foot.distance > sideLiningHeightMm ? "above" : "ends"]++;
        expect(more).toBeLessThan(1e-3);
      } else if (foot.distance < 10 && at[0] > 130 && at[0] < 175) {
        seen.whole++;
        expect(more).toBeCloseTo(0.6, 9);
      }
    });
    for (const count of Object.values(seen)) expect(count).toBeGreaterThan(20);
  });

  test("is the whole stiffener in the middle of the heel, nothing of it 9 mm below the topline and beyond its wings", () => {
    const least = set.settings.liningThicknessMm + set.settings.upperThicknessMm / 2;
    const p = set.onLast.mesh.positions, { edges } = set.onLast;
    const [feather, topline] = [new EdgeSearch(p, edges.featherMedial), new EdgeSearch(p, edges.toplineMedial)];
    const seen = { whole: 0, above: 0, beyond: 0 };
    beneath.heightMm.forEach((mm, v) => {
      const at = vertex(v);
      if (at[1] <= 0 || at[0] > 150) return;
      const foot = feather.nearest(at), below = topline.nearest(at).distance;
      if (below < 9) {
        seen.above++;
        expect(mm).toBeCloseTo(least, 9);
      } else if (foot.along > set.settings.counterInnerMm) {
        seen.beyond++;
        expect(mm).toBeCloseTo(least, 9);
      } else if (foot.along < 60 && foot.distance > 9 && below > 24) {
        seen.whole++;
        expect(mm).toBeCloseTo(least + set.settings.counterMm, 9);
      }
    });
    for (const count of Object.values(seen)) expect(count).toBeGreaterThan(20);
  });

  test("is the whole puff over the toe, and none 41 mm back along the centre line; one too long ends 12 mm before the throat", () => {
    const least = set.settings.liningThicknessMm + set.settings.upperThicknessMm / 2;
    const { centre } = set.onLast.edges;
    const along = Array.from(centre, (_, k) => edgeLength(set.onLast.mesh.positions, centre.subarray(0, k + 1)));
    const at = (mm: number) => beneath.heightMm[centre[along.findIndex((s) => s >= mm)]!]!;
    expect(at(42)).toBeCloseTo(least, 9);
    expect(at(14)).toBeCloseTo(least + set.settings.toePuffMm, 3);
    const long = lay({ puffReachMm: 90 });
    expect(long.findings.map((f) => f.code)).toEqual(["puff-near-throat"]);
    expect(long.heightMm[centre[along.findIndex((s) => s >= along[along.length - 1]! - 11.5)]!]!).toBeCloseTo(least, 9);
    expect(beneath.findings).toEqual([]);
  });

  test("adds to an open section its thickness times the angle through which it turns (Steiner, of a part of a section), within 2 %", () => {
    const even = lay({ ...bare, liningThicknessMm: 1 });
    const { mesh, edges } = set.onLast;
    const middle = vertex(edges.backMedial[edges.backMedial.length >> 1]!);
    const breastX = set.last.landmarks.seatPoint[0] + (set.last.landmarks.toePoint[0] - set.last.landmarks.seatPoint[0]) / 4;
    const halves = planeSections(mesh, middle, [0, 0, 1]).map(({ points }) => {
      const heel = Array.from({ length: points.length / 3 }, (_, i) => points.subarray(3 * i, 3 * i + 3)).filter(([x]) => x! < breastX);
      return heel[0]![0]! < heel[heel.length - 1]![0]! ? heel : heel.reverse();
    });
    expect(halves).toHaveLength(2);
    const round = [...halves[0]!.reverse(), ...halves[1]!.slice(1)];
    let turned = 0;
    for (let i = 2; i < round.length; i++) {
      const [a, b, c] = [round[i - 2]!, round[i - 1]!, round[i]!];
      turned += Math.atan2((b[0]! - a[0]!) * (c[1]! - b[1]!) - (b[1]! - a[1]!) * (c[0]! - b[0]!), (b[0]! - a[0]!) * (c[0]! - b[0]!) + (b[1]! - a[1]!) * (c[1]! - b[1]!));
    }
    expect(Math.abs(turned)).toBeGreaterThan(2.5);
    expect(Math.abs(adds(even.rows, "heel") / Math.abs(turned) - 1)).toBeLessThan(0.02);
  });

  test("adds twice as much when it is twice as thick, and nothing when there is nothing", () => {
    const once = lay({ ...bare, liningThicknessMm: 0.5 }).rows, twice = lay({ ...bare, liningThicknessMm: 1 }).rows, none = lay({ ...bare, liningThicknessMm: 0 }).rows;
    for (const key of ["joint", "heel", "topline", "feather", "back", "centre"] as const) {
      expect(adds(once, key), key).toBeGreaterThan(0.2);
      expect(Math.abs(adds(twice, key) - 2 * adds(once, key)), key).toBeLessThan(0.06);
      expect(adds(none, key), key).toBeCloseTo(0, 12);
    }
  });
});

describe("a lining laid flat by itself", () => {
  const lasts: readonly (readonly [string, () => Set])[] = [
    ["the example last", () => setOf(demoBoard().last)],
    ...(hasShared ? ["last_eu36_round", "last_eu41_pointed"] : []).map((name) => [name, () => setOf(truthLast(name))] as const),
  ];

  // Handbooks of pattern making take the lining in by 2 to 3 mm at the back of the topline, 3 to 4 in the middle, 4 to 5 at the feather
  // line, and up to 3 at the toe (common practice, no source): what our surfaces give of themselves must be of that size.
  test.each(lasts)("is smaller than its upper by what makers take it in: %s", (_, make) => {
    const { last, lines, onLast, settings } = make();
    const { over, rows } = layBeneath(onLast, last, settings);
    const free = layFree(over);
    const upper = layFlat(over, 0, { onLast, free, toplineMm: toplineAsked(onLast, 0.0225) });
    const lining = layLining(onLast, upper, free);
    const asked = { ...pieceSettingsFrom(pieceRulesFor(last)), liningBackInTopMm: 10, liningBackInMiddleMm: 10, liningBackInFeatherMm: 10, liningToeInMm: 10 };
    const left = lackingOf(asked, netUpper(last, lines, upper), { net: netUpper(last, lines, lining), heelLongerMm: heelLonger(rows) });
    const by = (left: number): number => 10 - left;
    for (const [mm, least, most] of [[by(left.liningBackInTopMm), 2, 3], [by(left.liningBackInMiddleMm), 3, 4], [by(left.liningBackInFeatherMm), 4, 5], [by(left.liningToeInMm), 2, 3]] as const) {
      expect(mm).toBeGreaterThan(least - 0.5);
      expect(mm).toBeLessThan(most + 0.5);
    }
    // Both are stretched alike at the topline that they are stitched together by.
    for (const half of ["toplineMedial", "toplineLateral"] as const) {
      const stretch = (shell: Shell, uv: Float64Array): number => edgeLength(shell.mesh.positions, shell.edges[half]) / flat(uv, shell.edges[half]);
      expect(Math.abs(stretch(onLast, lining.uv) - stretch(over, upper.uv))).toBeLessThan(0.001);
    }
  });

  const flat = (uv: Float64Array, ids: Uint32Array): number => edgeLength(Float64Array.from({ length: (uv.length / 2) * 3 }, (_, i) => (i % 3 === 2 ? 0 : uv[2 * Math.floor(i / 3) + (i % 3)]!)), ids);
});
