import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { cutPieces } from "#pieces/cut.ts";
import { severityOf } from "#base/findings.ts";
import { edgeLength, netUpper } from "#pieces/net-upper.ts";
import { boxCorners } from "#pieces/labels.ts";
import type { Mark, Piece } from "#pieces/piece.ts";
import { pieceKeys, pieceRulesFor, pieceSettingsFrom } from "#pieces/rules.ts";
import type { PieceSettings } from "#pieces/settings.ts";
import type { Side } from "#last/last.ts";
import { arcLengths, nearestOn } from "#plane/along.ts";
import { selfCrossing } from "#plane/crossing.ts";
import { contains } from "#plane/inside.ts";
import { winding } from "#plane/measure.ts";
import { ringEdge } from "#pieces/marks.ts";
import { shellRulesFor, shellSettingsFrom } from "#shell/rules.ts";
import { flatPump } from "../support/flat-pump.ts";

const labels = { title: "Practice pair", size: "38" };
function piecesOf(side: Side, noiseMm = 0, chosen: Partial<PieceSettings> = {}): readonly Piece[] {
  const pump = flatPump(side, noiseMm);
  return cutPieces({ ...pump, settings: pieceSettingsFrom(pieceRulesFor(pump.last), chosen), labels }).pieces;
}
const bits = (a: Float64Array): BigUint64Array => new BigUint64Array(a.slice().buffer);
const texts = (p: Piece): Extract<Mark, { kind: "text" }>[] => p.marks.filter((m) => m.kind === "text");
const drawn = (p: Piece): Exclude<Mark, { kind: "text" }>[] => p.marks.filter((m) => m.kind !== "text");

/** Slope and height at x = 0 of the line through the ends of another. */
const lineThrough = (xy: Float64Array): readonly [number, number] => {
  const n = xy.length;
  const slope = (xy[n - 1]! - xy[1]!) / (xy[n - 2]! - xy[0]!);
  return [slope, xy[1]! - slope * xy[0]!];
};

/** Any settings inside their usual ranges. */
const anySettings = (): fc.Arbitrary<PieceSettings> => {
  const rules = pieceRulesFor(flatPump().last);
  return fc.record(Object.fromEntries(Object.entries(rules).map(([key, r]) => [key, fc.double({ min: r.min, max: r.max, noNaN: true })]))) as unknown as fc.Arbitrary<PieceSettings>;
};

describe("all pieces of a whole-cut pump with back seam", () => {
  const pieces = piecesOf("right", 0.02);

  test("each once for either foot, own side first", () => {
    // The flat pump has no lining and no heel laid flat by themselves: it is lined in one, and no stiffener is drawn.
    const names = ["upper, net", "upper", "lining", "toe puff", "insole", "second insole board", "shank", "shank bend", "bottom filler", "outsole", "split lift", "lift 1", "top piece", "sock"];
    expect(pieces.map((p) => `${p.name}: ${p.side}`)).toEqual(names.flatMap((n) => [`${n}: right`, `${n}: left`]));
    expect(pieces.every((p) => p.perPair === 1)).toBe(true);
    expect(piecesOf("left").map((p) => p.side).slice(0, 2)).toEqual(["left", "right"]);
  });

  test("area by Green's theorem and perimeter by hypot agree with the fields", () => {
    for (const p of pieces) {
      const { xy } = p.outline;
      const n = xy.length / 2;
      let size = 0;
      let around = 0;
      for (let i = 0; i < n; i++) {
        const j = (i + 1) % n;
        size += ((xy[2 * i]! + xy[2 * j]!) / 2) * (xy[2 * j + 1]! - xy[2 * i + 1]!);
        around += Math.hypot(xy[2 * j]! - xy[2 * i]!, xy[2 * j + 1]! - xy[2 * i + 1]!);
      }
      expect(p.areaMm2).toBeCloseTo(size, 6);
      expect(p.perimeterMm).toBeCloseTo(around, 9);
      expect(winding(p.outline)).toBe(1);
    }
  });

  test("left is right mirrored, bit for bit, and every mark with it", () => {
    for (let k = 0; k < pieces.length; k += 2) {
      const [right, left] = [pieces[k]!, pieces[k + 1]!];
      const n = right.outline.xy.length;
      const back = new Float64Array(n);
      for (let i = 0; i < n; i += 2) {
        back[i] = left.outline.xy[n - 2 - i]!;
        back[i + 1] = -left.outline.xy[n - 1 - i]!;
      }
      expect(bits(back)).toEqual(bits(right.outline.xy));
      expect([left.areaMm2, left.perimeterMm, left.material, left.name]).toEqual([right.areaMm2, right.perimeterMm, right.material, right.name]);
      const flip = ([x, y]: readonly [number, number]) => [x, -y];
      const places = (m: Mark): unknown[] => {
        if (m.kind === "line") return Array.from({ length: m.line.xy.length / 2 }, (_, i) => [m.line.xy[2 * i], m.line.xy[2 * i + 1]]);
        if (m.kind === "notch") return [m.at, m.toward];
        if (m.kind === "arrow") return [m.from, m.to];
        return [m.at];
      };
      expect(drawn(left).map((m) => [m.kind, m.name])).toEqual(drawn(right).map((m) => [m.kind, m.name]));
      // Adding 0 makes −0 into 0, which the comparison would tell apart.
      const plain = (p: unknown[]) => (p as [number, number][]).map(([x, y]) => [x + 0, y + 0]);
      expect(drawn(left).map((m) => plain(places(m)))).toEqual(drawn(right).map((m) => plain((places(m) as [number, number][]).map(flip))));
    }
  });

  test("a left last gives the very same pair as its mirror image", () => {
    const byName = (all: readonly Piece[]) => new Map(all.map((p) => [p.name + p.side, p]));
    const fromRight = byName(piecesOf("right"));
    for (const [key, p] of byName(piecesOf("left"))) {
      expect(bits(p.outline.xy)).toEqual(bits(fromRight.get(key)!.outline.xy));
      expect(texts(p)).toEqual(texts(fromRight.get(key)!));
    }
  });

  test("texts name piece, side and size, lie inside, and read the same way on both twins", () => {
    const material = (p: Piece): string => `${p.material}, cut 1`;
    const whole = (p: Piece): string[] => [p.name, `${p.side}, size 38`, material(p), "Practice pair", "inside"];
    // What has less room says less, and what has no half to be told apart does not name the inside.
    const short: Readonly<Record<string, (p: Piece) => string[]>> = {
      "toe puff": (p) => [p.name, `${p.side}, size 38`, material(p), "Practice pair"],
      "second insole board": (p) => ["second", "insole board", `${p.side}, size 38`, material(p), "inside"],
      shank: (p) => [`shank, ${p.side}, size 38`],
      "shank bend": (p) => ["shank bend", `${p.side}, size 38`, "heel", "waist"],
      "bottom filler": (p) => ["bottom filler", `${p.side}, size 38`, material(p), "inside"],
      "split lift": (p) => ["split lift 38", `${p.side}, 2.5 mm, pare inside`],
      "lift 1": (p) => ["lift 1", `${p.side}, size 38, heel leather`],
      "top piece": (p) => ["top piece", `${p.side}, size 38, heel leather`],
    };
    for (const p of pieces) {
      const all = texts(p);
      const want = (short[p.name] ?? whole)(p);
      expect(all[0]!.text).toBe(want[0]);
      expect(all.map((t) => t.text)).toEqual(expect.arrayContaining(want));
      for (const t of all) {
        expect(t.angleDeg).toBeGreaterThanOrEqual(-90);
        expect(t.angleDeg).toBeLessThan(90);
        // Capitals of 2 mm; on what has little room the least that a printed line of small type has, 1.25 mm (5 point; common practice, no source).
        expect(t.heightMm, `${t.text} on ${p.name}`).toBeGreaterThanOrEqual(p.name in short ? 1.25 : 2);
        const box = boxCorners(t.at, (t.text.length * t.heightMm * 0.8) / 2, t.heightMm / 2, t.angleDeg);
        for (const [x, y] of box) expect(contains(p.outline, x, y), `${t.text} on ${p.side} ${p.name}`).toBe(true);
      }
      // Lines of one block follow each other downwards: down is the writing direction turned a quarter to the right.
      const [a, b] = [all[0]!, all[1]!];
      const angle = (a.angleDeg * Math.PI) / 180;
      expect((b.at[0] - a.at[0]) * Math.sin(angle) - (b.at[1] - a.at[1]) * Math.cos(angle)).toBeGreaterThan(a.heightMm / 2);
    }
  });

  test("every notch begins on the cutting line and points inward; pricks and lines lie inside", () => {
    for (const p of pieces) {
      const ring = ringEdge(p.outline);
      const away = (x: number, y: number): number => nearestOn(ring.line, ring.arc, x, y).distance;
      for (const m of drawn(p)) {
        const where = `${m.name} on ${p.side} ${p.name}`;
        if (m.kind === "notch") {
          expect(away(...m.at), where).toBeLessThan(0.05);
          expect(contains(p.outline, ...m.toward), where).toBe(true);
        } else if (m.kind === "prick") {
          expect(contains(p.outline, ...m.at) || away(...m.at) < 1e-9, where).toBe(true);
        } else {
          const ends = m.kind === "arrow" ? [m.from, m.to] : [m.line.xy.subarray(0, 2), m.line.xy.subarray(m.line.xy.length - 2)];
          for (const [x, y] of ends) expect(contains(p.outline, x!, y!) || away(x!, y!) < 1e-6, where).toBe(true);
        }
      }
    }
  });

  test("notches of toe centre, throat and seat lie on the centre line and along it", () => {
    const above = ["toe centre", "throat"], below = ["toe centre", "seat"], heel = ["seat"];
    const want: Readonly<Record<string, readonly string[]>> = {
      "upper, net": above, upper: above, lining: above, "toe puff": ["toe centre"], insole: below, "second insole board": heel, shank: [], "shank bend": [],
      "bottom filler": below, outsole: below, "split lift": heel, "lift 1": heel, "top piece": heel, sock: below,
    };
    // A heel is centred on the line from the seat to the middle of the waist; all else on the x axis.
    const leans = new Set(["split lift", "lift 1", "top piece"]);
    for (const p of pieces) {
      const notches = drawn(p).filter((m) => m.kind === "notch" && ["toe centre", "throat", "seat"].includes(m.name));
      expect(notches.map((m) => m.name).sort(), p.name).toEqual([...want[p.name]!].sort());
      const centre = drawn(p).find((m) => m.name === "centre line");
      const [slope, at] = leans.has(p.name) && centre?.kind === "line" ? lineThrough(centre.line.xy) : [0, 0];
      if (leans.has(p.name)) expect(Math.abs(slope)).toBeGreaterThan(0.01);
      for (const m of notches) if (m.kind === "notch") for (const [x, y] of [m.at, m.toward]) expect(Math.abs(y - slope * x - at), `${m.name} on ${p.name}`).toBeLessThan(0.1);
    }
  });

  test("the back seam's stitch line runs from cutting edge to cutting edge, through seat and back point", () => {
    for (const p of pieces.filter((q) => q.name === "upper" || q.name === "lining")) {
      const ring = ringEdge(p.outline);
      const marks = drawn(p);
      for (const half of ["inside", "outside"]) {
        const seam = marks.find((m) => m.name === `back seam, ${half}`);
        if (seam?.kind !== "line") throw new Error("no stitch line");
        const { xy } = seam.line;
        for (const end of [0, xy.length - 2]) expect(nearestOn(ring.line, ring.arc, xy[end]!, xy[end + 1]!).distance, `${p.name} ${half}`).toBeLessThan(1e-6);
        const arc = arcLengths(seam.line);
        // Beyond seat and back point it still has the lasting margin and the fold or trim to go.
        const total = arc[arc.length - 1]!;
        for (const [name, least] of [[`seat, ${half}`, 10], [`back point, ${half}`, 2.5]] as const) {
          const at = marks.find((m) => m.name === name);
          if (at?.kind !== "prick") throw new Error(`no ${name}`);
          const foot = nearestOn(seam.line, arc, ...at.at);
          expect(foot.distance, `${name} on ${p.name}`).toBeLessThan(0.01);
          expect(Math.min(foot.s, total - foot.s), `${name} on ${p.name}`).toBeGreaterThan(least);
        }
      }
    }
  });

  test("the joint line ends in its notches on the cutting edge", () => {
    const over = ["upper, net", "upper", "lining", "insole", "bottom filler", "outsole", "sock"];
    expect(pieces.filter((p) => drawn(p).some((m) => m.name === "joint line")).map((p) => p.name)).toEqual(over.flatMap((name) => [name, name]));
    for (const p of pieces.filter(({ name }) => over.includes(name))) {
      const marks = drawn(p);
      const ends = marks.flatMap((m) => (m.kind === "line" && m.name === "joint line" ? [[m.line.xy[0]!, m.line.xy[1]!], [m.line.xy[2]!, m.line.xy[3]!]] : []));
      for (const name of ["joint, inside", "joint, outside"]) {
        const notch = marks.find((m) => m.name === name);
        if (notch?.kind !== "notch") throw new Error(`no ${name} on ${p.name}`);
        expect(Math.min(...ends.map(([x, y]) => Math.hypot(x! - notch.at[0], y! - notch.at[1]))), `${name} on ${p.name}`).toBeLessThan(1e-6);
      }
    }
  });

  test("a piece without any allowance is net, one drawn in or out is not, and its label says which", () => {
    const words = (p: Piece): string => texts(p).map((t) => t.text).join(" ");
    const insole = (all: readonly Piece[]): Piece => all.find((p) => p.name === "insole")!;
    expect([insole(pieces).net, words(insole(pieces))]).toEqual([false, expect.stringContaining("drawn in 0.3 mm")]);
    const full = insole(piecesOf("right", 0, { insoleInMm: 0 }));
    expect([full.net, words(full)]).toEqual([true, expect.stringContaining("net, no allowance")]);
    expect(pieces.filter((p) => p.net).map((p) => p.name)).toEqual(["upper, net", "upper, net", "shank", "shank", "shank bend", "shank bend"]);
  });

  test("the marks a hand needs are there", () => {
    const names = (piece: string): string[] => drawn(pieces.find((p) => p.name === piece)!).map((m) => m.name);
    const onUpper = ["centre line", "joint line", "toe centre", "joint, inside", "joint, outside", "inner side", "throat", "back point, inside", "seat, outside",
      "height at 1/4, inside", "height at 1/2, outside", "height at 3/4, inside", "lowest, inside", "lowest, outside", "least stretch"];
    expect(names("upper, net")).toEqual(expect.arrayContaining(onUpper));
    expect(names("upper")).toEqual(expect.arrayContaining([...onUpper, "fold line of the topline", "feather line"]));
    // What lays the lining in the upper: the same places on both.
    expect(names("lining")).toEqual(expect.arrayContaining([...onUpper, "feather line", "topline: trim here"]));
    expect(pieces.flatMap((p) => drawn(p).map((m) => m.name)).filter((name) => /medial|lateral|%/.test(name))).toEqual([]);
    for (const piece of ["insole", "outsole", "sock"]) {
      expect(names(piece)).toEqual(expect.arrayContaining(["centre line", "joint line", "heel breast line", "inside", "seat", "toe centre", "least stretch"]));
    }
  });
});

describe("whatever is chosen within the usual ranges", () => {
  test("no outline crosses itself, areas nest, fields are finite", () => {
    fc.assert(
      fc.property(anySettings(), (settings) => {
        const { pieces } = cutPieces({ ...flatPump("right"), settings, labels });
        for (const p of pieces) {
          expect(selfCrossing(p.outline), p.name).toBeUndefined();
          expect(p.outline.xy.every(Number.isFinite)).toBe(true);
        }
        const area = (name: string): number => pieces.find((p) => p.name === name)!.areaMm2;
        expect(area("upper")).toBeGreaterThan(area("upper, net"));
        expect(area("outsole")).toBeGreaterThan(area("insole"));
      }),
      { seed: 31, numRuns: 25 },
    );
  });
});

describe("what was cut before", () => {
  const pump = flatPump();
  const rules = pieceRulesFor(pump.last);
  const cut = (chosen: Partial<PieceSettings>, title = "one", before?: ReturnType<typeof cutPieces>) =>
    cutPieces({ ...pump, settings: pieceSettingsFrom(rules, chosen), labels: { ...labels, title }, before });
  const first = cut({});
  const outcome = ({ pieces, strips, findings, made, grounds }: ReturnType<typeof cutPieces>) => ({ pieces, strips, findings, made, grounds });

  test("is taken over where it would come out the same: the upper after a change to the bottom, the bottom after one to the lining", () => {
    const shared = (now: ReturnType<typeof cutPieces>, name: string) => first.pieces.find((p) => p.name === name) === now.pieces.find((p) => p.name === name);
    const below = cut({ sockInMm: 2 }, "one", first);
    expect(["upper", "lining", "insole", "sock"].map((name) => shared(below, name))).toEqual([true, true, false, false]);
    const inside = cut({ liningTrimMm: 4 }, "one", first);
    expect(["lining", "insole", "sock"].map((name) => shared(inside, name))).toEqual([false, true, true]);
  });

  test("never stands in for what a change alters, whichever number it is", () => {
    for (const key of pieceKeys) {
      const { min, max, value } = rules[key];
      if (min === max) continue;
      const chosen = { [key]: value < max ? max : min };
      expect(outcome(cut(chosen, "one", first)), key).toEqual(outcome(cut(chosen)));
    }
    const usual = shellSettingsFrom(shellRulesFor(pump.last));
    for (const key of ["counterMm", "counterBelowMm", "counterInnerMm", "counterOuterMm", "puffReachMm", "skiveMm", "skiveFeatherMm"] as const) {
      const changed = { ...pump, stiff: { ...usual, [key]: usual[key] * 0.9 }, settings: pieceSettingsFrom(rules), labels: { ...labels, title: "one" } };
      expect(outcome(cutPieces({ ...changed, before: first })), key).toEqual(outcome(cutPieces(changed)));
    }
    expect(outcome(cut({}, "two", first))).toEqual(outcome(cut({}, "two")));
    const other = flatPump("left");
    const left = { ...other, settings: pieceSettingsFrom(pieceRulesFor(other.last)), labels };
    expect(outcome(cutPieces({ ...left, before: first }))).toEqual(outcome(cutPieces(left)));
  });
});

test("a raw topline is cut net: no fold, nothing snipped into it", () => {
  const pump = flatPump();
  const cut = (edge: "raw" | "folded") => cutPieces({ ...pump, edge, settings: pieceSettingsFrom(pieceRulesFor(pump.last, edge)), labels });
  const { pieces, findings } = cut("raw");
  const upper = pieces.find((p) => p.name === "upper")!;
  expect(upper.marks.filter((m) => (m.kind === "line" && m.use === "fold") || (m.kind === "notch" && /throat|height|lowest/.test(m.name)))).toEqual([]);
  expect(findings.filter((f) => severityOf(f) !== "note" || f.code === "piece-setting-unusual")).toEqual([]);
  // What is missing is the strip of the fold: its width along the topline.
  const folded = cut("folded").pieces.find((p) => p.name === "upper")!;
  const strip = 4.5 * edgeLength(netUpper(pump.last, pump.lines, pump.flat).topline);
  expect(Math.abs((folded.areaMm2 - upper.areaMm2) / strip - 1)).toBeLessThan(0.05);
});

test("one form for both halves: topline and back are each other's mirror, each feather edge stays its own", () => {
  const pump = flatPump();
  const [own, mean] = (["separate", "mean"] as const).map((halves) => netUpper(pump.last, pump.lines, pump.flat, halves));
  const mirrored = (net: typeof own): number => {
    const { line, arc } = net!.topline;
    return Math.max(...Array.from(arc, (_, i) => nearestOn(line, arc, line.xy[2 * i]!, -line.xy[2 * i + 1]!).distance));
  };
  expect(mirrored(own)).toBeGreaterThan(1);
  expect(mirrored(mean)).toBeLessThan(0.1);
  const { line, arc } = mean!.feather;
  const off = Array.from(arc, (s, i) => (s < 45 || s > edgeLength(mean!.feather) - 45 ? 0 : nearestOn(own!.feather.line, own!.feather.arc, line.xy[2 * i]!, line.xy[2 * i + 1]!).distance));
  expect(Math.max(...off)).toBeLessThan(0.1);
});
