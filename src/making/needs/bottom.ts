import type { Piece } from "#pieces/piece.ts";
import type { BottomMade } from "#pieces/bottom/made.ts";
import type { MakingInput } from "../input.ts";
import type { Need } from "../need.ts";
import { areaOf, countOf, partsByArea, piecesOf } from "./part-areas.ts";
import { inUnit, mmWords, quarterWords, thicknessRange, thicknessWords, volumeWords } from "../amounts/units.ts";
import { boardWaste, grossOf, smallPartsWaste, soleWaste } from "./waste.ts";
import { cutFrom, fromSheet } from "./sheets.ts";

/** Soles of flats, mm: common practice, no source. */
export const usualSoleMm = [4, 5] as const;
/** Shoulder leather for insoles begins about here, fibre board ends; mm. */
export const leatherInsoleMm = 2.3;

/** Both boards, shanks, filler, sole and heel. */
export const bottomNeeds = (input: MakingInput): readonly Need[] => [...boards(input), ...shanks(input), ...filler(input), ...sole(input), ...heel(input)];

const boardKind = (mm: number): string => (mm < leatherInsoleMm ? `fibre board, ${mmWords(mm)}` : `insole leather, shoulder, ${thicknessWords(mm)}`);

function boards({ pieces, settings: { firstBoardMm, secondBoardMm } }: MakingInput): readonly Need[] {
  return [
    ...fromSheet("insole board", pieces, boardWaste, {
      thicknessMm: firstBoardMm,
      kind: boardKind(firstBoardMm),
      reason: "The full insole on which the margins are lasted: it must hold cement and tacks and bend at the joint.",
      source: "fibre board 1.5 to 2 mm or shoulder leather 2.5 to 3 mm: common practice, no source",
    }),
    ...fromSheet("second board", pieces, boardWaste, {
      thicknessMm: secondBoardMm,
      kind: `stiff shank board or leather, ${mmWords(secondBoardMm)}`,
      reason: "From the heel to behind the joint: stiffens waist and seat and holds the shank. Soaked, bound to the last and dried, it takes the last's form.",
      source: "soaking and binding of the shank board: notes of a shoemaking course; thickness: common practice, no source",
    }),
  ];
}

function shanks({ pieces, made }: MakingInput): readonly Need[] {
  const cut = piecesOf(pieces, "shank"), count = countOf(cut);
  if (count === 0 || !made) return [];
  const { lengthMm, widthMm, thicknessMm } = made.shank;
  return [{
    good: "shanks", measure: "count", parts: [{ name: "shank", perPair: count, net: count }], net: count, gross: count,
    thicknessMm, widthMm,
    kind: `spring steel, ${lengthMm} × ${widthMm} × ${thicknessMm.toFixed(1)} mm, round in front`,
    reason: "Lies between the two boards from the heel to behind the joint and keeps the waist from sagging. Some leave it out of a flat whose second board is stiff; one school puts it in low heels and ballet flats too.",
    source: "two makers' notes on shanks; size and use in flats: common practice, no source",
  }];
}

/** Sheets of cork and felt are sold in these thicknesses, mm: common practice, no source. */
const corkMm = [1, 1.5, 2, 3, 4, 5, 6] as const;

/** So much may be lacking at the deepest place: no hand feels it under a sole (our own), mm. */
const lackingMm = 0.15;

/** The thinnest sheet that fills the hollow everywhere, or layers of the thickest. */
export function corkFor(mostMm: number): { readonly sheetMm: number; readonly layers: number } {
  const thickest = corkMm[corkMm.length - 1]!, asked = mostMm - lackingMm - 1e-9;
  const layers = Math.max(1, Math.ceil(asked / thickest));
  return { sheetMm: corkMm.find((mm) => mm * layers >= asked) ?? thickest, layers };
}

function filler({ pieces, made }: MakingInput): readonly Need[] {
  const depth = made?.filler?.depth, shoes = 2;
  const cork = depth && corkFor(depth.mostMm);
  const needs = fromSheet("filler", pieces, boardWaste, {
    ...(cork && { thicknessMm: cork.sheetMm }),
    kind: cork ? `cork sheet, ${cork.sheetMm} mm${cork.layers > 1 ? `, ${cork.layers} layers` : ""}, or felt` : "cork sheet, 2 to 3 mm, or felt",
    reason: depth
      ? `Fills the hollow between the lasted margins, ${depth.mostMm.toFixed(1)} mm at its deepest and ${volumeWords(shoes * depth.volumeMm3)} in both shoes; rasp it level. Leather does too: cork wanders where the foot presses.`
      : "Fills the hollow between the lasted margins, as thick as upper and lining are there; rasp it level.",
    source: "cork of 2 to 3 mm or felt: a forum of makers; sheets sold: common practice, no source",
  });
  return cork && depth ? needs.map((need) => layered({ ...need, volumeMm3: shoes * depth.volumeMm3 }, cork.layers)) : needs;
}

/** Where sheets lie over each other, each layer is cut from a sheet. */
const layered = (need: Need, layers: number): Need => ({ ...need, parts: need.parts.map((part) => ({ ...part, perPair: layers * part.perPair, net: layers * part.net })), net: layers * need.net, gross: layers * need.gross });

const sole = ({ pieces, settings: { soleMm } }: MakingInput): readonly Need[] =>
  fromSheet("sole leather", pieces, soleWaste, {
    thicknessMm: soleMm,
    kind: `sole bend, ${thicknessWords(soleMm, "iron")}`,
    reason: `Wears longest from the bend. Flats have ${thicknessRange(...usualSoleMm, "iron")}; the waist may be thinned to 3 to 3.5 mm. A rubber sole takes one coat of cement where leather takes two.`,
    source: "4 to 5 mm: common practice, no source; 1 iron is a 48th of an inch: tables of leather weights",
  });

function heel(input: MakingInput): readonly Need[] {
  const { pieces, made, settings } = input;
  const thick = layerThickness(made, settings.splitLiftMm);
  const own = (need: Need): Need => ({ ...need, parts: need.parts.map((part) => (thick.has(part.name) ? { ...part, thicknessMm: thick.get(part.name)! } : part)) });
  const isTop = ({ name }: Piece): boolean => name === "top piece";
  const cut = piecesOf(pieces, "heel leather"), tops = cut.filter(isTop), lifts = cut.filter((piece) => !isTop(piece));
  const each = partsByArea(lifts).map(({ name }) => (thick.has(name) ? `${name} ${thick.get(name)!.toFixed(1)} mm (${quarterWords(inUnit(thick.get(name)!, "iron"))} iron)` : name));
  const most = Math.max(0, ...lifts.map(({ name }) => thick.get(name) ?? 0)), top = thick.get("top piece");
  const source = "notes on heel leather; thickness of lifts and top piece: common practice, no source";
  return [
    ...cutFrom("lift leather", lifts, smallPartsWaste, { ...(most > 0 && { thicknessMm: most }), kind: each.join(", "), reason: `May be of shoulder or flank. What is thicker is pared down to its own thickness.${fromOffcuts(input, thick)}`, source }),
    ...cutFrom("top piece leather", tops, smallPartsWaste, { ...(top !== undefined && { thicknessMm: top }), kind: `from the butt${top === undefined ? "" : `, ${thicknessWords(top, "iron")}`}, or of rubber`, reason: "It wears and bears the step.", source }),
  ].map(own);
}

/** Thickness of leather that each part of the heel is cut from, mm: a lift that is pared, where it is thickest. */
function layerThickness(made: BottomMade | undefined, splitLiftMm: number): ReadonlyMap<string, number> {
  return new Map([["split lift", splitLiftMm], ...(made?.heel?.layers ?? []).map(({ name, backMm, breastMm }): [string, number] => [name, Math.max(backMm, breastMm)])]);
}

/** Which lifts come out of what the soles leave. They are counted all the same, for nobody knows whether the offcuts are sound. */
function fromOffcuts({ pieces, settings: { soleMm } }: MakingInput, thick: ReadonlyMap<string, number>): string {
  const soles = areaOf(piecesOf(pieces, "sole leather")), left = grossOf(soles, soleWaste) - soles;
  const thin = partsByArea(piecesOf(pieces, "heel leather")).filter(({ name }) => name !== "top piece" && (thick.get(name) ?? Infinity) <= soleMm);
  const asked = thin.reduce((sum, { net }) => sum + net, 0);
  if (thin.length === 0 || asked > left) return "";
  const dm2 = (mm2: number): string => inUnit(mm2, "dm2").toFixed(1);
  return ` From the sole's offcuts, if they are sound, may come: ${thin.map(({ name }) => name).join(", ")} (${dm2(asked)} of about ${dm2(left)} dm² left over). They are counted here all the same.`;
}
