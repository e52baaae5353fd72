import type { Finding } from "#base/findings.ts";
import { bounds } from "#plane/measure.ts";
import type { Piece } from "#pieces/piece.ts";
import type { MakingInput } from "../input.ts";
import type { Need } from "../need.ts";
import { piecesOf } from "./part-areas.ts";
import { usualShoulderFt2, type SkinSizes } from "./skins.ts";
import { mmWords, thicknessWords } from "../amounts/units.ts";
import { sheetWaste } from "./waste.ts";
import { fromSkin } from "./leathers.ts";
import { fromSheet, type About } from "./sheets.ts";

/** From this on a stiffener is of leather, below it of stiffened board, mm: leather 1.8 to 2.5, board 0.8 to 1.2 (common practice, no source). */
export const leatherStiffenerMm = 1.5;
/** The same of a toe puff: skived leather 1.0 to 1.5, stiffened sheet 0.6 to 1.0. */
export const leatherPuffMm = 1.05;

/** Stiffener, toe puff and elastic. */
export const stiffeningNeeds = (input: MakingInput, skins: SkinSizes, findings: Finding[]): readonly Need[] => [...stiffener(input, skins, findings), ...toePuff(input, skins, findings), ...elastic(input.pieces)];

function stiffener({ pieces, stiff: { counterMm } }: MakingInput, skins: SkinSizes, findings: Finding[]): readonly Need[] {
  const leather = counterMm >= leatherStiffenerMm;
  const about: About = {
    thicknessMm: counterMm,
    kind: leather ? `shoulder tanned with bark, firm, ${thicknessWords(counterMm)}` : `stiffener board of fibre or leather that takes latex, ${mmWords(counterMm)}`,
    reason: leather
      ? "Keeps the heel in form; from a shoulder, whose offcuts do for toe puffs too. Soaked until mellow, pasted in between upper and lining, and left to dry on the last; skived to nothing all round."
      : "Keeps the heel in form and is thin enough for a light shoe. Stuck in with latex; a kind that softens when it is warmed is warmed as its maker says, just before the back is drawn. Leather of 1.8 to 2.5 mm does the same and is pasted in mellow; then set its thickness, since the upper is laid over it.",
    source: "leather 1.8 to 2.5 mm or board 0.8 to 1.2 mm: common practice, no source; soaking and paste: notes of a shoemaking course",
  };
  return leather ? fromShoulder("stiffener", pieces, about, skins, findings) : fromSheet("stiffener", pieces, sheetWaste, about);
}

function fromShoulder(good: "stiffener" | "toe puff", pieces: readonly Piece[], about: About, skins: SkinSizes, findings: Finding[]): readonly Need[] {
  const amount = fromSkin(piecesOf(pieces, good), { good, usualFt2: usualShoulderFt2, called: "shoulder" }, skins, findings);
  return amount ? [{ good, measure: "area", ofLeather: true, ...amount, ...about }] : [];
}

function toePuff({ pieces, settings: { toePuffMm } }: MakingInput, skins: SkinSizes, findings: Finding[]): readonly Need[] {
  const leather = toePuffMm >= leatherPuffMm;
  const about: About = {
    thicknessMm: toePuffMm,
    kind: leather ? `firm leather, skived, ${thicknessWords(toePuffMm)}` : `stiffened cloth or felt for toe puffs that takes latex, ${mmWords(toePuffMm)}`,
    reason: `Keeps the toe from falling in; skived to nothing behind, for a step of a millimetre shows. ${leather ? "Leather goes in with paste, which stiffens it as it dries; sheet of 0.6 to 1.0 mm with latex." : "Sheet goes in with latex; a kind that softens when it is warmed is warmed as its maker says, just before the toe is drawn. Leather of 1.0 to 1.5 mm goes in with paste."}`,
    source: "common practice, no source; that a millimetre shows: a shoemaker's notes on toe puffs",
  };
  return leather ? fromShoulder("toe puff", pieces, about, skins, findings) : fromSheet("toe puff", pieces, sheetWaste, about);
}

/** Webbing is sold by the metre; it gives along its length, which runs as the topline does. */
const webbingMm = [20, 25, 30, 40, 50, 60, 80] as const;

function elastic(pieces: readonly Piece[]): readonly Need[] {
  const cut = piecesOf(pieces, "elastic");
  if (cut.length === 0) return [];
  const boxes = cut.map((piece) => ({ piece, box: bounds(piece.outline) }));
  const names = [...new Set(cut.map(({ name }) => name))];
  const parts = names.map((name) => {
    const same = boxes.filter(({ piece }) => piece.name === name);
    return { name, perPair: same.reduce((sum, { piece }) => sum + piece.perPair, 0), net: same.reduce((sum, { piece, box }) => sum + piece.perPair * (box.maxX - box.minX), 0) };
  });
  const deep = boxes.reduce((most, { box }) => Math.max(most, box.maxY - box.minY), 0);
  const widthMm = webbingMm.find((mm) => mm >= deep) ?? Math.ceil(deep);
  const net = parts.reduce((sum, part) => sum + part.net, 0);
  return [{
    good: "elastic", measure: "length", parts, net, gross: net, widthMm,
    kind: `woven elastic, ${widthMm} mm wide or wider; it must give along its length`,
    reason: `Each gore takes a piece ${deep.toFixed(0)} mm deep, cut across the webbing. Lay them side by side: nothing falls away along it.`,
    source: "widths of webbing: common practice, no source",
  }];
}
