import { expect, test } from "vitest";
import { Refusal } from "#base/refusal.ts";
import { draftEnds } from "#lasting/draft-ends.ts";
import { marginCut } from "#lasting/draft-margin.ts";
import { draftOrder } from "#pieces/draft-order.ts";
import { featherRing, jawShares, placeOnRing, pullOnVertices, roundRing } from "#lasting/feather-ring.ts";
import { groundOf } from "#lasting/ground-of.ts";
import { pullWord } from "#lasting/lasted.ts";
import { pullsAlong } from "#lasting/pulls.ts";
import { betweenStage, draftStages, loadOf } from "#lasting/sequence.ts";
import { jawsMm, lastingFrom } from "#lasting/settings.ts";
import { panelledUpper, sheetVertices, wholeUpper } from "#lasting/upper.ts";
import { ClosestPoint } from "#mesh/closest.ts";
import { keepTriangles, weld } from "#mesh/weld.ts";
import { neighbours } from "#mesh/neighbours.ts";
import { faceNormals } from "#mesh/normals.ts";
import { layCut } from "../support/laid-panels.ts";
import { exampleTable } from "../support/ready-to-pull.ts";

const table = exampleTable();
const cut = wholeUpper(table.flat);
const ring = featherRing(cut.over);
const pulls = pullsAlong(cut.onLast, table.last, lastingFrom());

test("the ground goes on above the topline on the last itself, without folds or steps", () => {
  const ground = groundOf(cut, table.last), onLast = new ClosestPoint(table.last.mesh), from = cut.over.mesh.positions.length / 3;
  for (const mesh of [ground.over, ground.onLast]) {
    const whole = weld(mesh, 1e-6), { twin, crowdedEdges, turnedEdges } = neighbours(whole), normals = faceNormals(whole);
    expect([crowdedEdges, turnedEdges]).toEqual([0, 0]);
    twin.forEach((other, h) => {
      if (other < 0) return;
      const [a, b] = [3 * Math.floor(h / 3), 3 * Math.floor(other / 3)];
      expect(normals[a]! * normals[b]! + normals[a + 1]! * normals[b + 1]! + normals[a + 2]! * normals[b + 2]!).toBeGreaterThan(0.7);
    });
  }
  const at = (mesh: { positions: Float64Array }, v: number) => [mesh.positions[3 * v]!, mesh.positions[3 * v + 1]!, mesh.positions[3 * v + 2]!] as const;
  for (let v = from; v < ground.onLast.positions.length / 3; v++) {
    expect(onLast.find(at(ground.onLast, v)).distance).toBeLessThan(1e-9);
    expect(onLast.find(at(ground.over, v)).distance).toBeGreaterThan(0.5);
  }
});

test("a last with a hole beneath the upper is refused with its place; its own opening at the comb is none", () => {
  const { last } = table, middle = cut.onLast.mesh, v = cut.onLast.edges.centre[cut.onLast.edges.centre.length >> 1]!;
  const at = [middle.positions[3 * v]!, middle.positions[3 * v + 1]!, middle.positions[3 * v + 2]!] as const;
  const hole = new ClosestPoint(last.mesh).find(at).triangle;
  expect(() => groundOf(cut, { ...last, mesh: keepTriangles(last.mesh, (t) => t !== hole) })).toThrow(Refusal);
  const top = last.mesh.positions.reduce((best, z, k) => (k % 3 === 2 && z > last.mesh.positions[best]! ? k : best), 2);
  expect(() => groundOf(cut, { ...last, mesh: keepTriangles(last.mesh, (t) => [0, 1, 2].every((k) => last.mesh.triangles[3 * t + k] !== Math.floor(top / 3))) })).not.toThrow();
});

test("pincers pull what they pull, with their middle where the draft is taken", () => {
  for (const draft of pulls.drafts) {
    const place = placeOnRing(ring, cut.onLast, draft), shares = jawShares(ring, place), round = ring.at[ring.at.length - 1]!;
    expect(shares.reduce((a, b) => a + b, 0)).toBeCloseTo(1, 12);
    const middle = shares.reduce((sum, share, k) => sum + share * (ring.at[k]! - place > round / 2 ? ring.at[k]! - round : ring.at[k]!), 0);
    expect(middle).toBeCloseTo(place, 9);
    shares.forEach((share, k) => expect(share === 0 || Math.abs(((ring.at[k]! - place + 1.5 * round) % round) - round / 2) < jawsMm / 2 + 12).toBe(true));
  }
  const even = pullOnVertices(ring, new Float64Array(ring.ids.length).fill(0.5));
  expect(even.reduce((a, b) => a + b, 0)).toBeCloseTo(0.5 * ring.at[ring.at.length - 1]!, 9);
  expect(roundRing(pulls.perMm).length).toBe(ring.ids.length);
});

test("pulls lead down the wall, square to the feather line", () => {
  const p = cut.over.mesh.positions;
  for (let k = 0; k < ring.ids.length; k++) {
    const a = 3 * ring.ids[Math.max(0, k - 1)]!, b = 3 * ring.ids[Math.min(ring.ids.length - 1, k + 1)]!;
    const [x, y, z] = [ring.outward[3 * k]!, ring.outward[3 * k + 1]!, ring.outward[3 * k + 2]!];
    expect(Math.hypot(x, y, z)).toBeCloseTo(1, 12);
    expect(z).toBeLessThan(-0.5);
    if (k > 0 && k < ring.ids.length - 1) expect(Math.abs(x * (p[b]! - p[a]!) + y * (p[b + 1]! - p[a + 1]!) + z * (p[b + 2]! - p[a + 2]!))).toBeLessThan(1e-9);
  }
});

// A shoemaking textbook's order of pulls (see src/pieces/draft-order.ts): toe, its corners, back, seat sides, joints; waists last (common practice, no source).
test("drafts come in the maker's order, both of a pair at once, and at last all that lies between", () => {
  const drafts = draftStages(pulls, ring, cut.onLast), stages = [...drafts, betweenStage(cut.onLast, pulls.drafts, ring, drafts)];
  expect(stages.map(({ what }) => what)).toEqual(["draft 1, toe centre", "drafts 2 and 3, toe corners", "draft 4, back", "drafts 5 and 6, seat sides", "drafts 7 and 8, joints", "drafts 9 and 10, waists", "between the drafts"]);
  const taken = stages.flatMap(({ places }) => [...places]);
  expect([...taken].sort((a, b) => a - b)).toEqual(Array.from(ring.ids, (_, k) => k));
  // Jaws bear what is pulled, but for what an edge beside them already hangs on by.
  const toe = loadOf(drafts[0]!, [80]).reduce((a, b) => a + b, 0);
  expect(toe).toBeGreaterThan(80 - 1e-9);
  expect(toe).toBeLessThan(90);
  // Back, seat sides and waists have a mark, toe and joints none.
  expect(drafts.flatMap((stage) => stage.pulls).filter(({ mark }) => mark).map(({ number }) => number)).toEqual([4, 5, 6, 9, 10]);
  expect(draftStages({ ...pulls, stopAtMarks: false }, ring, cut.onLast).flatMap((stage) => stage.pulls).some(({ mark }) => mark)).toBe(false);
});

test("an edge that comes farther over the feather line leaves more margin, by just as much", () => {
  const heldN = new Float64Array(ring.ids.length);
  const at = (mm: number) => {
    const positions = cut.over.mesh.positions.slice();
    ring.ids.forEach((v, k) => {
      for (let d = 0; d < 3; d++) positions[3 * v + d]! += mm * ring.outward[3 * k + d]!;
    });
    return draftEnds(pulls.drafts, { ring, over: cut.over, onLast: cut.onLast, positions, margins: table.seams, heldN });
  };
  for (const { number, overMm, marginMm, half } of at(0)) {
    expect(Math.abs(overMm)).toBeLessThan(1e-9);
    expect(marginMm).toBeCloseTo(marginCut(draftOrder[number - 1]!, table.seams), 9);
    expect(half === undefined).toBe(number === 1 || number === 4);
  }
  for (const { overMm } of at(3)) expect(overMm).toBeCloseTo(3, 1);
  for (const { overMm } of at(-2)) expect(Math.abs(overMm + 2)).toBeLessThan(0.2);
});

test("margins at the drafts are those of their zones", () => {
  const { lastingToeMm, lastingToeSidesMm, lastingHeelMm, lastingForepartMm, lastingInnerWaistMm, lastingOuterWaistMm } = table.seams;
  expect(draftOrder.map((draft) => marginCut(draft, table.seams))).toEqual([
    lastingToeMm, lastingToeSidesMm, lastingToeSidesMm, lastingHeelMm, lastingHeelMm, lastingHeelMm, lastingForepartMm, lastingForepartMm, lastingInnerWaistMm, lastingOuterWaistMm,
  ]);
});

test("pulls have words of the bench", () => {
  expect([2, 12, 13, 30, 31, 200].map(pullWord)).toEqual(["light", "light", "firm", "firm", "strong", "strong"]);
});

test("panels are sewn at every vertex that they share, and keep their flat shape and direction", () => {
  for (const way of ["quarters", "inner-seam"] as const) {
    const laid = layCut(table, way), upper = panelledUpper(laid);
    const root = Int32Array.from(upper.source, (_, k) => k);
    const find = (k: number): number => (root[k] === k ? k : find(root[k]!));
    for (let k = 0; k < upper.sewn.length; k += 2) root[find(upper.sewn[k]!)] = find(upper.sewn[k + 1]!);
    const { backMedial, backLateral } = upper.over.edges, twin = new Map(Array.from(backLateral, (v, k) => [v, backMedial[k]!]));
    const groups = new Map<number, Set<number>>();
    upper.source.forEach((v, k) => groups.set(twin.get(v) ?? v, (groups.get(twin.get(v) ?? v) ?? new Set()).add(find(k))));
    for (const found of groups.values()) expect(found.size).toBe(1);
    let from = 0;
    for (const { panel, uv } of laid.panels) {
      const shift = upper.flat[2 * from + 1]! - uv[1]!;
      uv.forEach((x, k) => expect(upper.flat[2 * from + k]! - x).toBeCloseTo(k % 2 === 0 ? 0 : shift, 9));
      from += panel.source.length;
    }
    expect(Array.from(sheetVertices(upper)).filter((k) => k < 0).length).toBe(0);
  }
});
