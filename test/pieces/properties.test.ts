// What must hold for any last, any line and any rule: random ones from a fixed seed, the same on every machine.
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { severityOf, type Finding } from "#base/findings.ts";
import { Refusal } from "#base/refusal.ts";
import { unwatched } from "#base/watch.ts";
import { defaultJob } from "#job/default-job.ts";
import type { Files } from "#job/files.ts";
import type { LastPair } from "#job/pair.ts";
import { Pipeline } from "#job/pipeline.ts";
import { lastFromMeasures } from "#last/from-measures.ts";
import { completeMeasures } from "#last/measures-by-size.ts";
import { lineRulesFor } from "#lines/rules.ts";
import { seamKinds, upperCuts } from "#pieces/choices.ts";
import { edgeLength, edgePoint, netUpper, type Edge } from "#pieces/net-upper.ts";
import { ringEdge } from "#pieces/marks.ts";
import type { Piece } from "#pieces/piece.ts";
import { pieceRulesFor } from "#pieces/rules.ts";
import type { PieceSettings } from "#pieces/settings.ts";
import { nearestOn } from "#plane/along.ts";
import { selfCrossing } from "#plane/crossing.ts";
import { mirrorOutline } from "#plane/mirror.ts";
import { signedArea } from "#plane/measure.ts";
import { possible } from "#shell/possible.ts";
import { anyLast } from "../support/any-last.ts";

/** A last of any size and toe, a throat line anywhere in its range, and for every rule a share of its range. */
const anyPump = fc.record({
  ...anyLast,
  cut: fc.constantFrom(...upperCuts),
  seam: fc.constantFrom(...seamKinds),
  throat: fc.double({ min: 0, max: 1, noNaN: true }),
  // The uppermost backs are refused on lasts whose comb begins low: another test's matter.
  back: fc.double({ min: 0, max: 0.8, noNaN: true }),
  shares: fc.array(fc.double({ min: 0, max: 1, noNaN: true }), { minLength: 24, maxLength: 24 }),
});
type Pump = typeof anyPump extends fc.Arbitrary<infer T> ? T : never;

const between = (rule: { readonly min: number; readonly max: number }, share: number): number => rule.min + share * (rule.max - rule.min);

/** A pair, or in its place the finding by which it is refused. */
type Outcome = LastPair | Finding;
interface Made {
  readonly within: () => Outcome;
  readonly beyond: () => Outcome;
}
const isPair = (outcome: Outcome): outcome is LastPair => "pieces" in outcome;
/** What may be refused: a number that cannot be, and a seam for which there is no room. */
const refusals: readonly Finding["code"][] = ["piece-setting-impossible", "shell-setting-impossible", "seam-through-joint", "seam-leaves-upper", "heel-part-impossible"];

/** The pair with rules within their ranges and the same with rules up to half a range beyond them, as far as they are possible at all. */
function makePair({ sizeEu, fitting, toe, side, heelHeightMm, cut, seam, throat, back, shares }: Pump): Made {
  const { measures } = completeMeasures({ sizeEu, fitting, toe, side, heelHeightMm });
  const last = lastFromMeasures(measures, "any last", unwatched);
  const lineRules = lineRulesFor(last);
  const pieceRules = pieceRulesFor(last);
  const pipeline = new Pipeline();
  const job = { ...defaultJob(), size: `EU ${sizeEu}`, last: { from: "measures", measures }, parts: { cut, seam } } as const;
  const lines = { throatDepthMm: between(lineRules.throatDepthMm, throat), backHeightMm: between(lineRules.backHeightMm, back) };
  // A coarse shell is laid flat in a fraction of the time and has the same edges to be cut by.
  const run = (pieces: Partial<PieceSettings>): Outcome => {
    try {
      return pipeline.run({ ...job, lines, pieces }, {} as Files, { triangles: 1500 }) as LastPair;
    } catch (error) {
      if (error instanceof Refusal && refusals.includes(error.finding.code)) return error.finding;
      throw error;
    }
  };
  const chosen = (spread: number): Partial<PieceSettings> => {
    const out: Record<string, number> = {};
    Object.entries(pieceRules).forEach(([key, rule], k) => {
      const value = between(rule, 0.5 + spread * (shares[k % shares.length]! - 0.5));
      const [least, most] = key in possible ? possible[key as keyof typeof possible] : [Math.min(0, rule.min), 100];
      if (rule.min < rule.max) out[key] = Math.min(most, Math.max(least, value));
    });
    return out;
  };
  return { within: () => run(chosen(1)), beyond: () => run(chosen(2)) };
}

const label = (p: Piece): string => `${p.side} ${p.name}`;
const told = (findings: readonly Finding[], piece: Piece, code: Finding["code"]): boolean => findings.some((f) => f.code === code && (f.data as { piece?: string }).piece === piece.name);

function holdsForAny({ pieces, findings }: LastPair): void {
  for (const piece of pieces) {
    if (selfCrossing(piece.outline)) expect(told(findings, piece, "piece-crosses-itself"), `${label(piece)} crosses itself and nothing says so`).toBe(true);
    expect(piece.outline.xy.every(Number.isFinite), label(piece)).toBe(true);
    expect(signedArea(piece.outline), label(piece)).toBeGreaterThan(0);
    if (piece.side !== "right") continue;
    const left = pieces.find((p) => p.side === "left" && p.name === piece.name)!;
    expect(left, piece.name).toBeDefined();
    expect([...mirrorOutline(left.outline).xy], piece.name).toEqual([...piece.outline.xy]);
    expect(left.areaMm2).toBeCloseTo(piece.areaMm2, 6);
  }
}

/** Distance of places along an edge from an outline by trying every segment, its ends left out. */
function distancesFrom(outline: Piece["outline"], edge: Edge, leaveMm: number): readonly number[] {
  const ring = ringEdge(outline);
  const end = edgeLength(edge);
  return Array.from({ length: 24 }, (_, k) => {
    const [x, y] = edgePoint(edge, leaveMm + ((end - 2 * leaveMm) * k) / 23);
    return nearestOn(ring.line, ring.arc, x, y).distance;
  });
}

/** The whole's topline and back edges lie at their widths from the cutting line. */
function exactOffsets({ last, lines, flat, pieces, pieceSettings: { toplineFoldMm, backSeamMm } }: LastPair): void {
  const net = netUpper(last, lines, flat);
  const upper = pieces.find((p) => p.side === "right" && p.name === "upper")!;
  for (const mm of distancesFrom(upper.outline, net.topline, 2 * toplineFoldMm + 6)) expect(Math.abs(mm - toplineFoldMm)).toBeLessThan(0.02);
  for (const back of [net.backMedial, net.backLateral]) for (const mm of distancesFrom(upper.outline, back, 2 * backSeamMm + 6)) expect(Math.abs(mm - backSeamMm)).toBeLessThan(0.02);
}

const upperNames = ({ pieces }: LastPair): string => pieces.filter((p) => p.side === "right" && (p.material === "upper leather" || p.name.endsWith(", net"))).map((p) => p.name).join();
const middle = Array.from({ length: 24 }, () => 0.5);

describe("any last, line and rule", () => {
  const seen = new Map<string, Set<string>>();
  test("no outline crosses itself untold, nothing is lost, both shoes mirror each other, allowances are exact offsets", () => {
    fc.assert(
      fc.property(anyPump, (pump) => {
        const made = makePair(pump);
        const [within, beyond] = [made.within(), made.beyond()];
        for (const outcome of [within, beyond]) {
          if (!isPair(outcome)) continue;
          holdsForAny(outcome);
          seen.set(pump.cut, (seen.get(pump.cut) ?? new Set()).add(upperNames(outcome)));
        }
        if (!isPair(within)) return;

        // Within their ranges rules never bring a drawing into disorder.
        const disorder: readonly Finding["code"][] = ["piece-crosses-itself", "seam-edges-differ", "seam-notches-apart", "seam-notch-alone", "allowance-off", "piece-area-off", "panels-area-off", "toe-not-square", "throat-not-square"];
        expect(within.findings.filter((f) => disorder.includes(f.code))).toEqual([]);
        if (pump.cut === "back-seam") exactOffsets(within);
      }),
      { seed: 5, numRuns: 8, endOnFailure: true },
    );
    // The same cut gives the same pieces of the upper, whatever the last and the rules.
    for (const [cut, found] of seen) expect([...found], cut).toHaveLength(1);
    expect(seen.size).toBeGreaterThan(1);
  });

  test("heel ends that lie close together keep their topline: EU 34 with a square toe", () => {
    const within = makePair({ sizeEu: 34, fitting: 6, toe: "square", side: "right", heelHeightMm: 12, cut: "back-seam", seam: "closed", throat: 0.5, back: 0.5, shares: middle }).within();
    if (!isPair(within)) throw new Error("a pair expected");
    exactOffsets(within);
    const [card, upper] = ["upper, net", "upper"].map((name) => within.pieces.find((p) => p.side === "right" && p.name === name)!);
    expect(upper!.areaMm2 - card!.areaMm2).toBeLessThan(1.6e4);
  });

  test("the same words give the same bytes", () => {
    const pump: Pump = { sizeEu: 37, fitting: 6, toe: "almond", side: "left", heelHeightMm: 11, cut: "quarters", seam: "lapped", throat: 0.3, back: 0.7, shares: Array.from({ length: 24 }, (_, k) => (k % 5) / 4) };
    const [a, b] = [makePair(pump).within(), makePair(pump).within()];
    if (!isPair(a) || !isPair(b)) throw new Error("pairs expected");
    expect(JSON.stringify(a.pieces.map((p) => [...p.outline.xy]))).toBe(JSON.stringify(b.pieces.map((p) => [...p.outline.xy])));
    expect(a.findings.filter((f) => severityOf(f) !== "note")).toEqual(b.findings.filter((f) => severityOf(f) !== "note"));
  });
});
