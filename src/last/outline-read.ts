import { finding, type Finding } from "#base/findings.ts";
import { Refusal } from "#base/refusal.ts";
import { signedArea } from "#plane/measure.ts";
import { mirrorReversedInto } from "#plane/mirror.ts";
import type { Outline } from "#plane/outline.ts";
import type { Drawing } from "./loft-drawn.ts";
import type { LastMeasurements, LastOutlines } from "./measured.ts";
import { evenOutline, movedInward } from "./outline-even.ts";
import { placeBottom, scaled } from "./outline-place.ts";
import { crossings, extent, Profile } from "./outline-profile.ts";
import { placeSide } from "./outline-side.ts";

export type Drawn = "bottom" | "side";

/** Outlines of the last itself (pencil taken off), heel end at x = 0, scaled to the stick length. */
export interface ReadOutlines {
  readonly bottom?: Outline;
  readonly side?: Outline;
  readonly drawing: Drawing;
  readonly findings: readonly Finding[];
}

/** A pencil, and the hand that leads it, put the line this far outside the last on each side at most, mm: our own limit. */
const thickestPencil = 9;
/** A stick length, a drawn line and a photograph's scale together are not surer than this, mm. */
const lengthTolerance = 1.5;
/** Beyond this share of the length an outline is of another last, or its scale is wrong. */
const otherLast = 0.06;

/**
 * Reads outlines: tells toe, side and ground by their shape, takes off the pencil and holds them to the measures.
 * @param like silhouettes of the last as planned from its measures
 * @throws Refusal for what is no outline of this last
 */
export function readOutlines(m: LastMeasurements, outlines: LastOutlines, like: { readonly bottom: Outline; readonly side: Outline }): ReadOutlines {
  const findings: Finding[] = [];
  const given = (["bottom", "side"] as const).filter((which) => outlines[which] !== undefined);
  const place = (which: Drawn, outline: Outline): Outline => (which === "bottom" ? placeBottom(outline).outline : placeSide(outline, like.side).outline);
  const raw = given.map((which) => evenOutline(sound(which, outlines[which]!)));
  const longer = raw.map((outline, i) => extent(place(given[i]!, outline).xy, 0)[1] - m.stickLengthMm);
  const pencil = outlines.pencilMm ?? Math.max(0, Math.min(thickestPencil, ...longer));
  const read: Partial<Record<Drawn, Outline>> = {};
  raw.forEach((outline, i) => {
    const which = given[i]!;
    const bare = place(which, movedInward(outline, pencil / 2));
    const [, lengthMm] = extent(bare.xy, 0);
    const left = lengthMm - m.stickLengthMm;
    const judged = { which, lengthMm, stickMm: m.stickLengthMm, pencilMm: pencil };
    if (Math.abs(left) > otherLast * m.stickLengthMm) throw new Refusal(finding("outline-other-last", judged));
    if (Math.abs(left) > lengthTolerance) findings.push(finding("outline-length", judged));
    const factor = m.stickLengthMm / lengthMm;
    read[which] = scaled(bare, factor, Math.abs(left) > lengthTolerance ? factor : 1);
  });
  const { bottom, side } = read;
  if (outlines.pencilMm === undefined && pencil > 0.3) findings.push(finding("outline-pencil", { pencilMm: pencil }));
  if (bottom) findings.push(...bottomFindings(m, bottom, like.bottom));
  if (side) findings.push(...sideFindings(m, side, like.side));
  return {
    ...(bottom && { bottom }),
    ...(side && { side }),
    drawing: { ...(bottom && { plan: new Profile(bottom) }), ...(side && { profile: new Profile(side), back: backOf(side, m.heelHeightMm) }) },
    findings,
  };
}

/** Counter-clockwise, with enough points to be a line round a last. */
function sound(which: Drawn, outline: Outline): Outline {
  const { xy } = outline;
  if (xy.length < 40 || !xy.every(Number.isFinite)) throw new Refusal(finding("outline-broken", { which }));
  const [left, right] = extent(xy, 0);
  const [low, high] = extent(xy, 1);
  const area = signedArea(outline);
  const across = Math.sqrt((right - left) ** 2 + (high - low) ** 2);
  // A last fills about a third of the square on its length from above, a quarter from the side.
  if (Math.abs(area) < 0.08 * across * across) throw new Refusal(finding("outline-broken", { which }));
  if (area > 0) return outline;
  const turned = mirrorReversedInto(new Float64Array(xy.length), xy);
  return { xy: turned.map((v, i) => (i % 2 === 1 ? -v : v)) };
}

/** Points of the back between the rounding of the seat and the comb, at even heights over the seat point. */
function backOf(side: Outline, heelHeightMm: number): NonNullable<Drawing["back"]> {
  const profile = new Profile(side);
  const top = profile.highAt(0.08 * profile.to) - heelHeightMm - 2;
  const heights: number[] = [];
  for (let w = 2; w < top; w += 2) heights.push(w);
  return { heights: Float64Array.from(heights), x: Float64Array.from(heights, (w) => crossings(side.xy, 1, w + heelHeightMm)[0]) };
}

/** How far the silhouette may stand out over the feather line on both sides together, mm: walls lean out 0 to 8 mm a side (our own). */
const standsOut = [-0.7, 16] as const;
/** Narrower than the bottom by more than this, mm, no drawn line is slipped. */
const slipped = -2;
/** Mean distances, mm, from the planned silhouette beyond which an outline is of something else: true ones have 1.6 to 3.5, swapped ones 8 to 19. */
const unlike = { bottom: 9, side: 7 } as const;

function bottomFindings(m: LastMeasurements, bottom: Outline, like: Outline): Finding[] {
  const out: Finding[] = [];
  const profile = new Profile(bottom);
  refuseUnlike("bottom", widthsApart(profile, new Profile(like)));
  const widest = (from: number, to: number): number => {
    let [up, down] = [-Infinity, Infinity];
    for (let s = from; s <= to; s += 0.005) {
      up = Math.max(up, profile.highAt(s * profile.to));
      down = Math.min(down, profile.lowAt(s * profile.to));
    }
    return up - down;
  };
  const check = (measure: "ballWidth" | "seatWidth", mm: number, outlineMm: number): void => {
    const over = outlineMm - mm;
    if (over < slipped) throw new Refusal(finding("outline-narrower", { measure, askedMm: mm, outlineMm }));
    if (over < standsOut[0] || over > standsOut[1]) out.push(finding("outline-width", { measure, askedMm: mm, outlineMm }));
  };
  check("ballWidth", m.ballWidthMm, widest(0.5, 0.93));
  check("seatWidth", m.seatWidthMm, widest(0.02, 0.25));
  if (placeBottom(bottom).sureMm < 0.8) out.push(finding("outline-side-doubtful", {}));
  return out;
}

/** Mean difference in width at equal shares of the length. */
function widthsApart(a: Profile, b: Profile): number {
  const width = (p: Profile, share: number): number => {
    const x = p.from + share * (p.to - p.from);
    return p.highAt(x) - p.lowAt(x);
  };
  let sum = 0;
  for (let k = 1; k < 50; k++) sum += Math.abs(width(a, k / 50) - width(b, k / 50)) / 49;
  return sum;
}

function refuseUnlike(which: Drawn, offMm: number): void {
  if (offMm > unlike[which]) throw new Refusal(finding("outline-unlike", { which, offMm }));
}

function sideFindings(m: LastMeasurements, side: Outline, like: Outline): Finding[] {
  refuseUnlike("side", placeSide(side, like).offMm);
  const profile = new Profile(side);
  const springMm = profile.lowAt(0.985 * profile.to);
  const [from, to] = extent(like.xy, 0);
  const usual = new Profile(like).lowAt(from + 0.985 * (to - from));
  return Math.abs(springMm - usual) > 2.5 ? [finding("outline-spring", { askedMm: m.toeSpringMm, outlineMm: m.toeSpringMm + springMm - usual })] : [];
}
