import type { Finding } from "#base/findings.ts";
import type { PartChoices } from "#pieces/choices.ts";
import type { Spot } from "./spot.ts";

/** Findings about pieces that speak of one number by their very kind. */
const byCode: Partial<Record<Finding["code"], Spot>> = {
  "side-seam-moved": "pieces sideSeamBehindThroatMm",
  "side-seam-near-throat": "pieces sideSeamBehindThroatMm",
  "side-seam-no-room": "pieces sideSeamBehindThroatMm",
  "heel-part-impossible": "pieces liningPocketWingMm",
  "seam-spring-too-wide": "shell springMm",
  "lap-too-wide": "pieces lapUnderMm",
  "seam-fold-too-tight": "pieces lapFoldMm",
  "dog-tail-too-wide": "pieces dogTailWideMm",
  "dog-tail-left-out": "pieces dogTailLongMm",
  "lining-joint-near": "pieces liningJointMm",
  "lining-quarter-short": "pieces liningJointMm",
  "pocket-short": "pieces liningPocketWingMm",
  "pocket-near-seam": "pieces liningPocketTopMm",
  "pocket-height": "lines backHeightMm",
  "stiffener-height": "shell counterBelowMm",
  "stiffener-crosses": "shell counterBelowMm",
  "puff-doubles": "pieces puffLastingMm",
  "puff-thin": "shell puffReachMm",
  "puff-at-bend": "shell puffReachMm",
  "puff-none": "shell puffReachMm",
  "margins-meet": "pieces marginLeftMm",
  "split-lift-thin": "pieces splitLiftMm",
  "shank-near-joint": "pieces shankMm",
  "shank-beyond-board": "pieces shankMm",
  "heel-below-ground": "pieces secondBoardMm",
  "strap-meets-nothing": "pieces strapBehindThroatMm",
  "gore-under-strap": "pieces strapBehindThroatMm",
  "toe-cap-too-long": "pieces toeCapMm",
};

const marginByZone: Readonly<Record<string, Spot>> = {
  toe: "pieces lastingToeMm",
  forepart: "pieces lastingForepartMm",
  joint: "pieces lastingForepartMm",
  "inner waist": "pieces lastingInnerWaistMm",
  "outer waist": "pieces lastingOuterWaistMm",
  heel: "pieces lastingHeelMm",
  "heel breast": "pieces lastingHeelMm",
  "middle of the heel": "pieces lastingHeelMm",
};

/** The fold that is meant: of a piece that is laid on, or by the edge of the upper. */
function foldOf(piece: string, edge: string): Spot {
  if (/cap/.test(piece)) return "pieces toeCapFoldMm";
  if (/strap/.test(piece)) return "pieces strapFoldMm";
  if (/strip/.test(piece)) return "pieces backStripFoldMm";
  return /seam/.test(edge) ? "pieces lapFoldMm" : "pieces toplineFoldMm";
}

/** The number that a finding about pieces speaks of, where one code serves several by the place, the piece or the edge that it names. */
export function pieceSpotOf(f: Finding): Spot | undefined {
  switch (f.code) {
    case "fold-needs-notches":
    case "fold-too-tight":
      return foldOf(f.data.piece, f.data.edge);
    case "lasting-margin-narrow":
      // A lining's margin is the upper's, less what it is shorter.
      return /lining/.test(f.data.piece) ? "pieces liningLastingShorterMm" : marginByZone[f.data.zone];
    case "lasting-margins-overlap":
      return f.data.where === "waist" ? (f.data.innerMm >= f.data.outerMm ? "pieces lastingInnerWaistMm" : "pieces lastingOuterWaistMm") : marginByZone[f.data.where];
    case "notch-deeper-than-margin":
      return /quarter/.test(f.data.piece) ? (/inner/.test(f.data.piece) ? "pieces lastingInnerWaistMm" : "pieces lastingOuterWaistMm") : "pieces lastingForepartMm";
    case "lining-outside-upper":
      return /back/.test(f.data.where) ? "pieces liningBackInMiddleMm" : "pieces liningToeInMm";
    case "seam-leaves-upper":
      return /side|quarter/.test(f.data.what) ? "pieces sideSeamBehindThroatMm" : "pieces innerSeamBeforeBreastMm";
    case "stiffener-beyond-sheet":
      return f.data.half === "medial" ? "shell counterInnerMm" : "shell counterOuterMm";
    case "gore-too-near":
      return f.data.what === "seam" ? "pieces goreWideMm" : "pieces goreDeepMm";
    default:
      return byCode[f.code];
  }
}

const choiceByCode: Partial<Record<Finding["code"], keyof PartChoices>> = {
  "dog-tail-left-out": "backTop",
  "dog-tail-has-no-place": "backTop",
  "lining-in-one": "lining",
  "lining-quarter-short": "lining",
  "strap-meets-nothing": "strap",
  "gore-under-strap": "gore",
  "gore-too-near": "gore",
  "toe-cap-too-long": "toeCap",
  "side-lining-short": "sideLining",
};
const choiceByExtra: Readonly<Record<string, keyof PartChoices>> = { "instep strap": "strap", "elastic gore": "gore", bow: "bow", "toe cap": "toeCap", "back strip": "backStrip", "side lining": "sideLining" };

/** The choice by word that brought a finding about: what was asked for and is left out, or lies in the way of another. */
export function choiceOf(f: Finding): Spot | undefined {
  const key = f.code === "extra-left-out" ? choiceByExtra[f.data.what] : choiceByCode[f.code];
  return key && `parts ${key}`;
}

/** Words of the codes that speak of a piece without naming it. */
const byPiece: readonly (readonly [piece: RegExp, code: RegExp])[] = [
  [/strap/, /^strap-|^gore-under-strap$/],
  [/gore/, /^gore-/],
  [/^toe cap$/, /^toe-cap-/],
  [/^toe puff$/, /^puff-/],
  [/^stiffener$/, /^stiffener-/],
  [/^heel pocket$/, /^pocket-|^lining-joints-differ$/],
  [/^(lining|vamp lining|(inner|outer) quarter lining)$/, /^lining-/],
  [/^shank/, /^shank-/],
  [/filler/, /^(filler|margins)-/],
  [/^insole$/, /^insole-/],
  [/split lift/, /^split-lift-/],
  [/^lift|top piece/, /^heel-(wedge|high|none|top-piece-only|below-ground)$/],
  [/^(upper|outer quarter)$/, /^dog-tail-/],
];

/** Whether a finding speaks of a piece, by its name or by its kind. */
export function speaksOfPiece(f: Finding, piece: string): boolean {
  const named = (f.data as { readonly piece?: unknown }).piece;
  if (typeof named === "string") return named === piece;
  return byPiece.some(([at, code]) => at.test(piece) && code.test(f.code));
}
