import { asinClamped } from "#base/angle.ts";
import { finding, type Finding } from "#base/findings.ts";
import { area } from "#plane/measure.ts";
import { joined } from "#plane/along.ts";
import { selfCrossing } from "#plane/crossing.ts";
import type { NetPanel } from "../panel.ts";
import type { Xy } from "../piece.ts";
import type { ToCheck } from "./to-check.ts";
import { cornerReach, pointOf, tailReach, type CutPanel, type EdgeWidths } from "./widths.ts";

/** Most that the area of a piece may differ from its net area and its strips of allowance, as a share. */
const mostShare = 0.001;
/** Most that panels, each laid flat by itself, may differ in all from the upper laid flat in one, as a share: what leather gives and takes. */
const mostShareOfPanels = 0.02;

/** Nothing is lost or counted twice: a piece is its net panel and its allowances, the panels are the whole upper. */
export function checkBalance(input: ToCheck, cut: readonly CutPanel[]): readonly Finding[] {
  const pieces = cut.flatMap((c) => {
    // An outline that crosses itself has no area that means anything; it is told as that.
    if (selfCrossing(c.draft.outline)) return [];
    const expected = netArea(c.panel) + stripsArea(c, tailReach(input));
    const found = area(c.draft.outline);
    return Math.abs(found - expected) <= mostShare * expected ? [] : [finding("piece-area-off", { piece: c.draft.name, foundCm2: found / 100, expectedCm2: expected / 100 })];
  });
  if (!input.whole) return pieces;
  const whole = netArea(input.whole);
  const share = input.panels.reduce((sum, panel) => sum + netArea(panel), 0) / whole - 1;
  return Math.abs(share) <= mostShareOfPanels ? pieces : [...pieces, finding("panels-area-off", { share, mostShare: mostShareOfPanels })];
}

export function netArea({ edges }: NetPanel): number {
  const { xy } = joined(edges.map((e) => e.line));
  return area({ xy: xy.subarray(0, xy.length - 2) });
}

/**
 * Area between the net edges and the cutting line, mm². Beside an edge a strip of width w is ∫ w ds + ½ ∫ w² dθ with θ the angle of its
 * outward direction (Steiner's formula for a width that changes). Within a corner's reach, where edges run on, are mirrored or carry a
 * tongue of `tailMm`, the area is that of the polygon between both edges and the cutting line.
 */
export function stripsArea({ panel, widths, cut }: CutPanel, tailMm = 0): number {
  const roles = panel.edges.map(({ role }) => role);
  // A tongue stands where back seam and topline meet.
  const ends = widths.map((edge, e) => steadyPart(edge, roles[e] === "back" || roles[e] === "topline" ? tailMm : 0));
  return widths.reduce((sum, edge, e) => {
    const next = (e + 1) % widths.length;
    return sum + stripArea(edge, ends[e]!) + cornerArea(edge, ends[e]!.to, widths[next]!, ends[next]!.from, cut);
  }, 0);
}

interface Steady {
  readonly from: number;
  readonly to: number;
}

/** Numbers of the first and the last place of an edge beyond the reach of its corners; both at its middle where it is too short to have such. */
function steadyPart({ s, mm }: EdgeWidths, tailMm: number): Steady {
  const end = s[s.length - 1]!;
  const reach = Math.min(cornerReach(mm[mm.length >> 1]! || 0, tailMm), end / 2);
  const from = s.findIndex((at) => at >= reach);
  return { from, to: Math.max(from, s.findLastIndex((at) => at <= end - reach)) };
}

function stripArea({ s, mm, outward: n }: EdgeWidths, { from, to }: Steady): number {
  let sum = 0;
  for (let k = from + 1; k <= to; k++) {
    const a = mm[k - 1]!, b = mm[k]!;
    if (Number.isNaN(a + b)) continue;
    const turn = asinClamped(n[2 * k - 2]! * n[2 * k + 1]! - n[2 * k - 1]! * n[2 * k]!);
    sum += ((a + b) / 2) * (s[k]! - s[k - 1]!) + (turn * (a * a + a * b + b * b)) / 6;
  }
  return sum;
}

/** From a place of the one edge out to the cutting line, along it to the way out of a place of the next, and back along both edges. */
function cornerArea(before: EdgeWidths, last: number, after: EdgeWidths, first: number, cut: CutPanel["cut"]): number {
  const from = before.on[last]!;
  const to = after.on[first]!;
  if (Number.isNaN(from + to)) return 0;
  const back = (from - to + cut.length) % cut.length;
  // Where the ways out cross before the cutting line, the part is counted twice and is taken off.
  const twice = back < cut.length / 2;
  const way = twice ? [...cut.between(to, from)].reverse() : cut.between(from, to);
  const ring = [...way, ...pointsOf(after, 0, first).reverse(), ...pointsOf(before, last, before.s.length - 1).reverse()];
  let sum = 0;
  for (let i = 0, j = ring.length - 1; i < ring.length; j = i++) sum += ring[j]![0] * ring[i]![1] - ring[i]![0] * ring[j]![1];
  return sum / 2;
}

const pointsOf = (edge: EdgeWidths, from: number, to: number): Xy[] => Array.from({ length: to - from + 1 }, (_, k) => pointOf(edge, from + k));
