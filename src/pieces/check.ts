import { finding, type Finding } from "#base/findings.ts";
import { Refusal } from "#base/refusal.ts";
import { directionAt, partBetween } from "#plane/along.ts";
import { selfCrossing } from "#plane/crossing.ts";
import { curvatures } from "#plane/curvature.ts";
import { contains } from "#plane/inside.ts";
import type { Polyline } from "#plane/outline.ts";
import type { Thicknesses } from "#shell/beneath.ts";
import { possible } from "#shell/possible.ts";
import type { Draft } from "./draft.ts";
import { bendsOf, mostBends } from "./even.ts";
import { ringEdge } from "./marks.ts";
import type { NetUpper } from "./net-upper.ts";
import type { PieceRules, PieceSettings } from "./settings.ts";

/** Most that any allowance may be at all, mm. */
const mostAllowanceMm = 100;
/** Most that two edges of a seam may differ, mm. */
const seamToleranceMm = 0.1;
/** Least margin for the pincers, mm (common practice, no source). */
const pincersMm = 15;
/** Least radius of a hollow that can be folded, mm, and the distance of the snips (common practice, no source). */
const tightestFoldMm = 8;
const snipsMm = 4;
/** Most that the topline may be off square to the centre line. */
const squareDeg = 2;

/**
 * Looks at the settings before anything is drawn. Throws a Refusal for what is no number or would turn a piece inside out;
 * returns notes for what is outside the usual range.
 */
export function checkSettings(rules: PieceRules, settings: PieceSettings): readonly Finding[] {
  const findings: Finding[] = [];
  for (const [key, rule] of Object.entries(rules)) {
    const value = settings[key as keyof PieceSettings];
    const [least, most] = key in possible ? possible[key as keyof Thicknesses] : [Math.min(0, rule.min), mostAllowanceMm];
    if (!(value >= least && value <= most)) throw new Refusal(finding("piece-setting-impossible", { name: rule.name, value, least, most }));
    if (value < rule.min || value > rule.max) findings.push(finding("piece-setting-unusual", { name: rule.name, value, min: rule.min, max: rule.max }));
  }
  return findings;
}

export function checkUpper(net: NetUpper, settings: PieceSettings): readonly Finding[] {
  return [...checkBack(net), ...checkMargins(settings), ...checkThroat(net, settings)];
}

function checkBack({ backDifferenceMm }: NetUpper): readonly Finding[] {
  if (Math.abs(backDifferenceMm) <= seamToleranceMm) return [];
  return [finding("back-edges-differ", { differenceMm: backDifferenceMm, allowedMm: seamToleranceMm })];
}

function checkMargins(settings: PieceSettings): readonly Finding[] {
  const zones: readonly (readonly [string, number])[] = [
    ["toe", settings.lastingToeMm],
    ["sides of the toe", settings.lastingToeSidesMm],
    ["forepart", settings.lastingForepartMm],
    ["outer waist", settings.lastingOuterWaistMm],
    ["inner waist", settings.lastingInnerWaistMm],
    ["heel", settings.lastingHeelMm],
  ];
  return zones
    .filter(([, widthMm]) => widthMm < pincersMm)
    .map(([zone, widthMm]) => finding("lasting-margin-narrow", { zone, widthMm, neededMm: pincersMm }));
}

function checkThroat(net: NetUpper, settings: PieceSettings): readonly Finding[] {
  const findings: Finding[] = [];
  const { line, arc } = net.topline;
  const [dx, dy] = directionAt(line, arc, net.places.throat, 3);
  // The centre line is the x axis, so a square topline runs along y.
  const degrees = (Math.atan2(Math.abs(dx), Math.abs(dy)) * 180) / Math.PI;
  if (degrees > squareDeg) findings.push(finding("throat-not-square", { degrees, allowedDeg: squareDeg }));
  const around = partBetween(line, arc, net.places.throat - 60, net.places.throat + 60);
  // The topline runs counter-clockwise round the piece, so a hollow bends to the right: negative.
  const tightest = curvatures(around, 3).reduce((a, k) => Math.max(a, -k), 0);
  const foldMm = settings.toplineFoldMm;
  if (tightest <= 0 || foldMm === 0) return findings;
  const radiusMm = 1 / tightest;
  const neededMm = Math.max(tightestFoldMm, foldMm);
  if (radiusMm < neededMm) findings.push(finding("fold-too-tight", { foldMm, radiusMm, neededMm }));
  // A fold stretches its edge by fold over radius; above a tenth leather has to be snipped (common practice, no source).
  else if (foldMm / radiusMm > 0.1) findings.push(finding("fold-needs-notches", { foldMm, radiusMm, everyMm: snipsMm }));
  return findings;
}

/** Outlines that cross themselves or waver, and a lining that reaches beyond its upper other than at the topline, where it is trimmed. */
export function checkDrafts(drafts: readonly Draft[], net: NetUpper): readonly Finding[] {
  const findings: Finding[] = drafts.filter((d) => selfCrossing(d.outline)).map((d) => finding("piece-crosses-itself", { piece: d.name }));
  for (const { name, outline } of drafts) {
    const changes = bendsOf(outline);
    if (changes > mostBends) findings.push(finding("edge-uneven", { piece: name, changes, most: mostBends }));
  }
  const upper = drafts.find((d) => d.name === "upper");
  const lining = drafts.find((d) => d.name === "lining");
  return upper && lining ? [...findings, ...checkLining(upper, lining, net)] : findings;
}

/** Distance of a point from a line, mm. */
function distanceTo({ xy }: Polyline, px: number, py: number): number {
  let least = Infinity;
  for (let i = 0; i + 3 < xy.length; i += 2) {
    const x = xy[i]!, y = xy[i + 1]!;
    const dx = xy[i + 2]! - x, dy = xy[i + 3]! - y;
    const square = dx * dx + dy * dy;
    const t = square > 0 ? Math.min(1, Math.max(0, ((px - x) * dx + (py - y) * dy) / square)) : 0;
    const [ex, ey] = [px - (x + t * dx), py - (y + t * dy)];
    least = Math.min(least, ex * ex + ey * ey);
  }
  return Math.sqrt(least);
}

function checkLining(upper: Draft, lining: Draft, net: NetUpper): readonly Finding[] {
  const ring = ringEdge(upper.outline);
  const worst = { feather: 0, back: 0 };
  const { xy } = lining.outline;
  // Every fourth point, one in 3 mm: edges as smooth as these do not reach out and back in between.
  for (let i = 0; i < xy.length; i += 8) {
    const x = xy[i]!;
    const y = xy[i + 1]!;
    if (contains(upper.outline, x, y)) continue;
    const away = ({ line }: NetUpper["feather"]): number => distanceTo(line, x, y);
    const back = Math.min(away(net.backMedial), away(net.backLateral));
    const feather = away(net.feather);
    // At the back point itself both are equally far: that is still the topline's corner.
    if (away(net.topline) <= Math.min(back, feather)) continue;
    const where = back < feather ? "back" : "feather";
    worst[where] = Math.max(worst[where], distanceTo(ring.line, x, y));
  }
  return (["feather", "back"] as const)
    .filter((where) => worst[where] > 0.01)
    .map((where) => finding("lining-outside-upper", { byMm: worst[where], where: where === "feather" ? "lasting margin" : "back seam" }));
}
