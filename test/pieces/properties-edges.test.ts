// What must hold for an upper in one or in three with any choice and any rule, from a fixed seed; on a pump drawn by formula, so that many can be tried.
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { severityOf } from "#base/findings.ts";
import { checkParts } from "#pieces/check-parts.ts";
import { backTops, seamKinds, usualParts, type Chosen } from "#pieces/choices.ts";
import { bothOf, type Draft } from "#pieces/draft.ts";
import { lastingDrafts } from "#pieces/lasting-drafts.ts";
import { transferPricks } from "#pieces/pricks.ts";
import { wholePanel } from "#pieces/net-panels.ts";
import { edgeLength, edgePoint, netUpper } from "#pieces/net-upper.ts";
import type { NetPanel } from "#pieces/panel.ts";
import { pieceRulesFor, pieceSettingsFrom } from "#pieces/rules.ts";
import { ringEdge } from "#pieces/marks.ts";
import { upperPieces } from "#pieces/upper/pieces.ts";
import { nearestOn } from "#plane/along.ts";
import { selfCrossing } from "#plane/crossing.ts";
import { contains } from "#plane/inside.ts";
import { mirrorOutline } from "#plane/mirror.ts";
import { area, perimeter, signedArea } from "#plane/measure.ts";
import { toplineEdges } from "#shell/settings.ts";
import { flatPump } from "../support/flat-pump.ts";
import { quartersOf } from "../support/split-panels.ts";

const pump = flatPump("right");
const net = netUpper(pump.last, pump.lines, pump.flat);
const cuts: Readonly<Record<"whole" | "quarters", readonly NetPanel[]>> = {
  whole: [wholePanel(net)],
  quarters: quartersOf(net, { feather: net.places.jointMedial + 40, topline: net.places.throat - 45 }, { feather: net.places.jointLateral - 20, topline: net.places.throat + 55 }),
};

const share = fc.double({ min: 0, max: 1, noNaN: true });
const any = fc.record({
  cut: fc.constantFrom("whole" as const, "quarters" as const),
  seam: fc.constantFrom(...seamKinds),
  backSeam: fc.constantFrom("closed" as const, "butted" as const),
  backTop: fc.constantFrom(...backTops),
  edge: fc.constantFrom(...toplineEdges),
  shares: fc.array(share, { minLength: 31, maxLength: 31 }),
});

interface Try {
  readonly panels: readonly NetPanel[];
  readonly chosen: Chosen;
  readonly drafts: readonly Draft[];
  readonly settings: ReturnType<typeof pieceSettingsFrom>;
}

/** `spread` 1 takes every rule within its range, 2 up to half a range beyond it, never below nothing. */
function upperOf({ cut, shares, ...choices }: typeof any extends fc.Arbitrary<infer T> ? T : never, spread: number): Try {
  const chosen: Chosen = { ...usualParts, ...choices, cut: cut === "whole" ? "back-seam" : "quarters" };
  const rules = pieceRulesFor(pump.last, chosen.edge);
  const own = Object.fromEntries(Object.entries(rules).map(([key, { min, max }], k) => [key, Math.max(Math.min(0, min), min + (0.5 + spread * (shares[k % shares.length]! - 0.5)) * (max - min))]));
  const settings = pieceSettingsFrom(rules, own);
  const panels = cuts[cut];
  return { panels, chosen, settings, drafts: upperPieces({ panels, settings, chosen, labels: { title: "Practice pair", size: "38" } }).drafts };
}

/** What every drawing must be, whatever was asked for. */
function sound({ drafts }: Try): void {
  for (const draft of drafts) {
    const [right, left] = bothOf(draft, "right");
    expect(draft.outline.xy.every(Number.isFinite), draft.name).toBe(true);
    expect(signedArea(draft.outline), draft.name).toBeGreaterThan(0);
    expect(selfCrossing(draft.outline), draft.name).toBeUndefined();
    expect([...mirrorOutline(left.outline).xy], draft.name).toEqual([...right.outline.xy]);
    // By its own walk, not by the sum that was taken over from the right one.
    expect(Math.abs(area(left.outline) / right.areaMm2 - 1)).toBeLessThan(1e-12);
    expect(Math.abs(perimeter(left.outline) / right.perimeterMm - 1)).toBeLessThan(1e-12);
  }
}

describe("an upper with any choice and any rule", () => {
  test("within their ranges: sound, complete, nothing wrong with seams, allowances, areas and narrow places", () => {
    const names = new Map<string, Set<string>>();
    fc.assert(
      fc.property(any, (tried) => {
        const made = upperOf(tried, 1);
        sound(made);
        names.set(tried.cut, (names.get(tried.cut) ?? new Set()).add(made.drafts.map((d) => d.name).join()));
        // Margins that leap from zone to zone are told as what they are.
        const look = checkParts(made).filter((f) => severityOf(f) === "look" && f.code !== "lasting-margin-narrow" && f.code !== "edge-uneven");
        expect(look).toEqual([]);
      }),
      { seed: 1905, numRuns: 60, endOnFailure: true },
    );
    // The same cut gives the same pieces.
    for (const found of names.values()) expect(found.size).toBe(1);
  });

  test("beyond their ranges: still sound, or the piece that is not is named", () => {
    fc.assert(
      fc.property(any, (tried) => {
        const made = upperOf(tried, 2);
        const crossed = made.drafts.filter((d) => selfCrossing(d.outline)).map((d) => d.name);
        sound({ ...made, drafts: made.drafts.filter((d) => !crossed.includes(d.name)) });
        const told = checkParts(made).flatMap((f) => (f.code === "piece-crosses-itself" ? [f.data.piece] : []));
        expect(told).toEqual(crossed);
      }),
      { seed: 1906, numRuns: 60, endOnFailure: true },
    );
  });

  test("closed and folded edges are exact offsets of the net: every place within 0.02 mm, tried against every segment", () => {
    fc.assert(
      fc.property(any, (tried) => {
        const { panels, drafts, chosen, settings } = upperOf(tried, 1);
        const asked = { topline: chosen.edge === "taped" || chosen.edge === "folded" ? settings.toplineFoldMm : chosen.edge === "bagged" ? settings.toplineBagMm : 0, back: chosen.backSeam === "closed" ? settings.backSeamMm : 0 };
        for (const panel of panels) {
          const ring = ringEdge(drafts.find((d) => d.ground === panel.name && !d.net)!.outline);
          for (const edge of panel.edges) {
            if (edge.role !== "topline" && edge.role !== "back") continue;
            const mm = asked[edge.role];
            const leave = 2 * mm + 8 + (chosen.backTop === "dog-tail" ? 1.5 * settings.dogTailLongMm : 0);
            for (const t of [0, 0.2, 0.4, 0.6, 0.8, 1]) {
              const [x, y] = edgePoint(edge, leave + t * (edgeLength(edge) - 2 * leave));
              expect(Math.abs(nearestOn(ring.line, ring.arc, x, y).distance - mm)).toBeLessThan(0.02);
            }
          }
        }
      }),
      { seed: 1907, numRuns: 25, endOnFailure: true },
    );
  });

  test("grips and pricks lie in their piece, all ten drafts on every cut", () => {
    fc.assert(
      fc.property(any, (tried) => {
        const { panels, drafts } = upperOf(tried, 1);
        const numbers = new Set<string>();
        for (const panel of panels) {
          const piece = drafts.find((d) => d.ground === panel.name && !d.net)!;
          const marks = piece.marks.filter((m) => !(m.kind === "line" && m.name.startsWith("draft ")) && m.kind !== "prick");
          const grips = lastingDrafts(panel, piece.outline, marks);
          for (const label of grips.labels) {
            numbers.add(label.lines[0]!.text);
            expect(contains(piece.outline, ...label.at)).toBe(true);
          }
          for (const prick of transferPricks(marks)) if (prick.kind === "prick") expect(contains(piece.outline, ...prick.at), prick.name).toBe(true);
        }
        expect(numbers.size).toBe(10);
      }),
      { seed: 1908, numRuns: 25, endOnFailure: true },
    );
  });
});
