import type { LastPair } from "#job/pair.ts";
import type { Piece, Xy } from "#pieces/piece.ts";
import type { NamePlate } from "#sheets/name-plate.ts";
import { profileOf } from "#sheets/shoe-picture.ts";
import { thumb } from "./thumb.ts";
import { detailsPicture, piecesPicture, sketchPicture } from "./draw.ts";
import { drawLegend } from "./legend.ts";
import { drawSections, edgeSections, seamSections } from "./sections.ts";
import type { PairName, Pairs } from "./pairs.ts";

/** Pictures of whole pieces: the pair they are taken from and the names of the pieces, right ones. */
const whole: Readonly<Record<string, { readonly of: PairName; readonly pieces: readonly string[] }>> = {
  upper: { of: "usual", pieces: ["upper"] },
  "upper-inner-seam": { of: "inner", pieces: ["upper"] },
  vamp: { of: "lapped", pieces: ["vamp"] },
  quarters: { of: "lapped", pieces: ["inner quarter", "outer quarter"] },
  lining: { of: "usual", pieces: ["vamp lining", "heel pocket", "inner quarter lining", "outer quarter lining"] },
  "lining-one": { of: "lapped", pieces: ["lining"] },
  stiffener: { of: "usual", pieces: ["stiffener"] },
  "toe-puff": { of: "usual", pieces: ["toe puff"] },
  "side-lining": { of: "added", pieces: ["inner side lining", "outer side lining"] },
  insole: { of: "usual", pieces: ["insole", "second insole board"] },
  shank: { of: "usual", pieces: ["shank", "shank bend"] },
  filler: { of: "usual", pieces: ["bottom filler"] },
  outsole: { of: "usual", pieces: ["outsole"] },
  heel: { of: "usual", pieces: ["split lift", "lift 1", "top piece"] },
  sock: { of: "usual", pieces: ["sock"] },
  "sock-short": { of: "added", pieces: ["sock"] },
  "sock-heel": { of: "butted", pieces: ["sock"] },
  "instep-strap": { of: "added", pieces: ["instep strap", "strap lining"] },
  "elastic-gore": { of: "gore", pieces: ["elastic gore"] },
  bow: { of: "added", pieces: ["bow", "bow stay", "bow knot"] },
  "back-strip": { of: "added", pieces: ["back strip"] },
  "toe-cap": { of: "added", pieces: ["toe cap"] },
};

/** Windows on a place of a piece: round the marks of a name, or beside them. */
interface Detail {
  readonly of: PairName;
  readonly piece: string;
  readonly round: string;
  readonly words: string;
}
const details: Readonly<Record<string, { readonly widthMm: number; readonly heightMm: number; readonly places: readonly Detail[] }>> = {
  "back-tops": {
    widthMm: 58,
    heightMm: 44,
    places: [
      { of: "usual", piece: "upper", round: "back point, outside", words: "mitre, outer" },
      { of: "added", piece: "outer quarter", round: "back point, outside", words: "notch, outer" },
      { of: "gore", piece: "upper", round: "back point, outside", words: "dog-tail, outer" },
      { of: "gore", piece: "upper", round: "back point, inside", words: "dog-tail, inner" },
    ],
  },
  "side-seams": {
    widthMm: 64,
    heightMm: 66,
    places: [
      { of: "added", piece: "inner quarter", round: "side seam, inside", words: "closed: quarter" },
      { of: "lapped", piece: "inner quarter", round: "side seam, inside", words: "lapped: quarter, under" },
      { of: "lapped", piece: "vamp", round: "side seam, inside", words: "lapped: vamp, over" },
      { of: "butted", piece: "inner quarter", round: "side seam, inside", words: "butted: quarter" },
    ],
  },
  "gore-cut": { widthMm: 90, heightMm: 46, places: [{ of: "gore", piece: "upper", round: "lowest, inside", words: "where the gore goes in, inner side" }] },
  "topline-edges": {
    widthMm: 58,
    heightMm: 44,
    places: [
      { of: "usual", piece: "upper", round: "back point, outside", words: "taped or folded" },
      { of: "bagged", piece: "upper", round: "back point, outside", words: "bagged" },
      { of: "bound", piece: "upper", round: "back point, outside", words: "bound, wrapped or raw" },
    ],
  },
};

/** Every picture of the pages on the parts, by file name without its ending. */
export function pictures(pairs: Pairs): ReadonlyMap<string, string> {
  const drawn = Object.entries(whole).map(([name, { of, pieces }]) => [name, piecesPicture(titleOf(name), piecesOf(pairs[of], pieces), plateOf(pairs[of]))] as const);
  const near = Object.entries(details).map(([name, { places, ...size }]) => {
    const shown = places.map(({ of, piece, round, words }) => {
      const [found] = piecesOf(pairs[of], [piece]);
      return { piece: found!, middle: middleOf(found!, round), words };
    });
    return [name, detailsPicture(titleOf(name), size, shown, plateOf(pairs.usual))] as const;
  });
  const { pieceSettings, pieces } = pairs.usual;
  const sections = [["edge-sections", edgeSections(pieceSettings), [-18, 6]], ["seam-sections", seamSections(pieceSettings), [-11, 11]]] as const;
  const cutThrough = sections.map(([name, all, span]) => [name, sketchPicture(titleOf(name), drawSections(all, span), pieces[0]!)] as const);
  return new Map([...drawn, ...near, ...cutThrough, ["lines", sketchPicture("lines", drawLegend(), pieces[0]!)]]);
}

/** The piece that stands for each page in the index. */
const small: Readonly<Record<string, readonly [PairName, string]>> = {
  upper: ["usual", "upper"],
  vamp: ["lapped", "vamp"],
  quarters: ["lapped", "inner quarter"],
  lining: ["usual", "vamp lining"],
  stiffener: ["usual", "stiffener"],
  "toe-puff": ["usual", "toe puff"],
  "side-lining": ["added", "inner side lining"],
  insole: ["usual", "insole"],
  shank: ["usual", "shank"],
  filler: ["usual", "bottom filler"],
  outsole: ["usual", "outsole"],
  heel: ["usual", "split lift"],
  sock: ["added", "sock"],
  edges: ["bagged", "upper"],
  seams: ["added", "outer quarter"],
  tapes: ["inner", "upper"],
  "instep-strap": ["added", "instep strap"],
  "elastic-gore": ["gore", "elastic gore"],
  bow: ["added", "bow"],
  "back-strip": ["added", "back strip"],
  "toe-cap": ["added", "toe cap"],
};

export const smallPictures = (pairs: Pairs): ReadonlyMap<string, string> => new Map(Object.entries(small).map(([page, [of, piece]]) => [page, thumb(piecesOf(pairs[of], [piece])[0]!)]));

/** The pieces shown on a picture, for telling their marks. */
export function shownOn(name: string, pairs: Pairs): readonly Piece[] {
  const found = whole[name];
  if (!found) throw new Error(`There is no picture of whole pieces called "${name}".`);
  return piecesOf(pairs[found.of], found.pieces);
}

export const plateOf = ({ labels, last, lines }: LastPair): NamePlate => ({ ...labels, profile: profileOf(last, lines) });

const titleOf = (name: string): string => `${name.replaceAll("-", " ")}, example pair`;

function piecesOf(pair: LastPair, names: readonly string[]): readonly Piece[] {
  return names.map((name) => {
    const piece = pair.pieces.find((p) => p.side === "right" && p.name === name);
    if (!piece) throw new Error(`The example pair has no piece called "${name}"; it has ${pair.pieces.map((p) => p.name).join(", ")}.`);
    return piece;
  });
}

/** The middle of all marks of one name; where a seam's marks are no notches they are called marks of it. */
function middleOf({ name, marks }: Piece, round: string): Xy {
  const at = marks.flatMap((m) => (m.kind === "text" || (m.name !== round && m.name !== `mark of the ${round}`) ? [] : m.kind === "notch" || m.kind === "prick" ? [m.at] : m.kind === "line" ? [[m.line.xy[0]!, m.line.xy[1]!] as const] : []));
  if (at.length === 0) throw new Error(`The ${name} has no mark called "${round}"; it has ${marks.flatMap((m) => (m.kind === "text" ? [] : [m.name])).join(", ")}.`);
  return [at.reduce((s, [x]) => s + x, 0) / at.length, at.reduce((s, [, y]) => s + y, 0) / at.length];
}
