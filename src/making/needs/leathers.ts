import type { Finding } from "#base/findings.ts";
import type { Material, Piece, Strip } from "#pieces/piece.ts";
import type { GoodId } from "../goods.ts";
import type { MakingInput } from "../input.ts";
import type { Need } from "../need.ts";
import { areaOf, countOf, largestOf, netOf, partsByArea, piecesOf, stripsByArea } from "./part-areas.ts";
import { skinSize, usualSkinFt2, type SkinSizes } from "./skins.ts";
import { holdsOf } from "./sheets.ts";
import { cutLength } from "../amounts/cut-length.ts";
import { areaWords, mmWords, thicknessRange, thicknessWords } from "../amounts/units.ts";
import { grossOf, skinWaste } from "./waste.ts";

/** Thickness for women's flats, mm: common practice, no source. */
export const usualUpperMm = [1.0, 1.1] as const;
export const usualLiningMm = [0.8, 1.0] as const;
const usualSockMm = [0.6, 0.8] as const;
/** Above this goat is hard to find, mm: common practice, no source. */
const goatMostMm = 1;

type LeatherGood = GoodId & Material;

interface FromSkin {
  readonly good: LeatherGood;
  readonly usualFt2: number;
  readonly strips?: readonly Strip[];
  readonly called?: string;
}

/** Upper, lining, sock and side lining: what is cut from soft skins. */
export function leatherNeeds(input: MakingInput, skins: SkinSizes, findings: Finding[]): readonly Need[] {
  const { pieces, strips, settings, leathers } = input;
  const cut = (from: FromSkin, about: Pick<Need, "kind" | "reason" | "source"> & { readonly thicknessMm?: number }): readonly Need[] => {
    const amount = fromSkin(piecesOf(pieces, from.good), from, skins, findings);
    return amount ? [{ good: from.good, measure: "area", ...amount, ...about }] : [];
  };
  const upperFt2 = usualSkinFt2[leathers.upper.known], liningFt2 = usualSkinFt2[leathers.lining.known];
  return [
    ...cut({ good: "upper leather", usualFt2: upperFt2, strips: strips.filter(({ material }) => material === "upper leather") }, aboutUpper(input)),
    ...cut({ good: "lining leather", usualFt2: liningFt2 }, aboutLining(input)),
    ...cut({ good: "sock leather", usualFt2: liningFt2 }, aboutSock(input)),
    ...cut({ good: "side lining", usualFt2: usualSkinFt2["lining goat"] }, {
      thicknessMm: settings.sideLiningMm,
      kind: `thin kid, calf or linen, ${thicknessWords(settings.sideLiningMm)}`,
      reason: "Gives a soft upper or a wide joint something to stand on between stiffener and toe puff. Offcuts of lining will do where they are thin enough.",
      source: "a workshop of hand shoemakers on side linings; thickness: common practice, no source",
    }),
  ];
}

/** Net, gross and the smallest piece that still holds the largest part; nothing where a pair has no such piece. */
export function fromSkin(pieces: readonly Piece[], { good, usualFt2, strips = [], called = "skin" }: FromSkin, skins: SkinSizes, findings: Finding[]): Pick<Need, "parts" | "net" | "gross" | "waste" | "holds"> | undefined {
  const largest = largestOf(pieces);
  if (!largest) return undefined;
  const parts = [...partsByArea(pieces), ...stripsByArea(strips)];
  const net = netOf(parts);
  const skin = skinSize(skins, good, usualFt2, findings);
  const waste = skinWaste(areaOf(pieces) / countOf(pieces), skin.mm2, { said: skin.said, called });
  const gross = grossOf(net, waste), holds = holdsOf(pieces, largest);
  return { parts, net, gross, waste: { ...waste, why: `${waste.why}${besideEachOther(holds, gross, called)}` }, holds };
}

/** Pieces of a pair come from like places. Whether large ones nest is seen on the skin alone, so what they take side by side is told and not counted. */
function besideEachOther({ longMm, wideMm, count }: NonNullable<Need["holds"]>, gross: number, called: string): string {
  const boxes = count * longMm * wideMm;
  return boxes <= gross ? "" : ` The ${count} largest pieces, unless they nest, take ${count} × ${Math.ceil(longMm)} × ${Math.ceil(wideMm)} mm side by side, ${areaWords(boxes)}: more than is counted. Try the patterns on the ${called} before you buy it.`;
}

const within = (mm: number, [least, most]: readonly [number, number]): boolean => mm >= least - 1e-9 && mm <= most + 1e-9;
const thicknessAsked = (mm: number, usual: readonly [number, number]): string => (within(mm, usual) ? thicknessRange(...usual) : thicknessWords(mm));
const besideUsual = (mm: number, usual: readonly [number, number], thinner: string, thicker: string): string =>
  within(mm, usual) ? "" : ` You set ${thicknessWords(mm)}, ${usual[0].toFixed(1)} to ${usual[1].toFixed(1)} mm is usual: ${mm < usual[0] ? thinner : thicker}`;

/** Those that there are, one after the other. */
const sentences = (...texts: readonly (string | false | undefined)[]): string => texts.filter((text): text is string => typeof text === "string").join(" ");

function aboutUpper({ settings, leathers, strips }: MakingInput): Pick<Need, "kind" | "reason" | "source" | "thicknessMm"> {
  const mm = settings.upperThicknessMm;
  const binding = strips.find(({ material }) => material === "upper leather");
  return {
    thicknessMm: mm,
    kind: `${leathers.upper.name}, ${thicknessAsked(mm, usualUpperMm)}, firm along the topline`,
    reason: sentences(
      "Right and left come from like places of one skin, side by side, the tight way alike.",
      `Thin enough to fold and to lie in fine pleats at the toe, stout enough to keep the topline.${besideUsual(mm, usualUpperMm, "it folds well but gives more with wear.", "it must be skived more, and the pleats get thick.")}`,
      binding && `The binding of each shoe is a strip of it ${cutLength(binding.lengthMm)} × ${mmWords(binding.widthMm)}, split or skived to ${thicknessWords(settings.bindingThickMm)}.`,
      leathers.upper.known === "goat" && mm > goatMostMm && "Goat is mostly 0.7 to 1.0 mm: ask for stout skins, or take calf.",
      leathers.upper.known === "nappa" && "Nappa gives much: stick a thin backing under it.",
      "Skins of one lot differ by 0.2 mm: measure yours.",
    ),
    source: "thickness for women's flats: common practice, no source; spread within a lot: notes on grading leather",
  };
}

function aboutLining({ settings, leathers }: MakingInput): Pick<Need, "kind" | "reason" | "source" | "thicknessMm"> {
  const mm = settings.liningThicknessMm;
  return {
    thicknessMm: mm,
    kind: `${leathers.lining.name}, ${thicknessAsked(mm, usualLiningMm)}, undyed or fast to rubbing`,
    reason: `Lies against the foot and must breathe and wear; the stouter part of the skin for the heel.${besideUsual(mm, usualLiningMm, "it wears through at the heel first.", "it fills the shoe, and its laps are felt.")}`,
    source: "thickness for women's flats: common practice, no source",
  };
}

function aboutSock({ parts: { sock } }: MakingInput): Pick<Need, "kind" | "reason" | "source" | "thicknessMm"> {
  return {
    thicknessMm: usualSockMm[1],
    kind: `lining leather, ${thicknessRange(...usualSockMm)}`,
    reason: `${sock === "full" ? "Covers the whole insole" : "Covers the rear of the insole and the nails of the heel"}. May come from the lining's skin, if that is large enough for both: then do not buy it by itself.`,
    source: "common practice, no source",
  };
}
