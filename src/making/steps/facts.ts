import { isFolded } from "#pieces/choices.ts";
import type { Material, Piece, Strip } from "#pieces/piece.ts";
import { lastsOf } from "../calendar/lasts.ts";
import type { MakingInput } from "../input.ts";
import { readPairs } from "../money/read-pairs.ts";
import { leatherInsoleMm } from "../needs/bottom.ts";
import { cementOf, type Cement } from "../needs/cement-choice.ts";
import { featherMm } from "../needs/nails.ts";
import { leatherPuffMm, leatherStiffenerMm } from "../needs/stiffening.ts";

/** What the steps ask about a pair: what was cut for it, and how it is put together. */
export interface Facts extends Omit<MakingInput, "pieces"> {
  /** Of the right shoe, each name once; the left one has the same. */
  readonly cut: readonly Piece[];
  readonly has: (name: string) => boolean;
  readonly namesOf: (material: Material) => readonly string[];
  /** Pieces of that material for the pair. */
  readonly countOf: (material: Material) => number;
  readonly strip: (name: string) => Strip | undefined;
  /** A fold goes round the topline. */
  readonly folds: boolean;
  /** The topline stays in sight as it was cut. */
  readonly rawTopline: boolean;
  /** The upper has a seam at the back, and it is sewn closed. */
  readonly backSeam: boolean;
  readonly backClosed: boolean;
  /** The upper has a seam at the inner waist or one on each side. */
  readonly sideSeam: boolean;
  readonly dogTail: boolean;
  readonly threeLinings: boolean;
  /** The stiffener is leather, to be wetted and pasted, rather than board; the same of the toe puff. */
  readonly stiffenerOfLeather: boolean;
  readonly puffOfLeather: boolean;
  /** The insole is leather, to be soaked before it is blocked, rather than fibre board. */
  readonly insoleOfLeather: boolean;
  /** A heel is built on the sole. What was traced without a last has no height to build to: the maker's own last says it. */
  readonly heel: boolean;
  /** What boards, margins, soles and heels are stuck with. */
  readonly cement: Cement;
  /** Pairs that are made together, and the pairs of lasts there are for them. */
  readonly pairs: number;
  readonly lasts: number;
  /** Length round one shoe along which the margin is nailed; nothing where the pieces do not show it. */
  readonly nailedMm?: number;
}

/** Which steps there are goes by the pieces that were cut, so that what could not be cut has no step. */
export function factsOf(input: MakingInput): Facts {
  const { pieces, parts, edge, settings, stiff, strips, said, made } = input;
  const cut = pieces.filter(({ side }) => side === "right");
  const backSeam = parts.cut !== "inner-seam";
  const backClosed = backSeam && parts.backSeam === "closed";
  const feather = featherMm(pieces);
  const names = new Set(cut.map(({ name }) => name));
  const pairs = readPairs(said.pairs, []);
  return {
    ...input,
    cut,
    has: (name) => names.has(name),
    namesOf: (material) => cut.filter((p) => p.material === material).map(({ name }) => name),
    countOf: (material) => pieces.reduce((sum, p) => sum + (p.material === material ? p.perPair : 0), 0),
    strip: (name) => strips.find((s) => s.name === name),
    folds: isFolded(edge) && settings.toplineFoldMm > 0,
    rawTopline: edge === "raw" || (isFolded(edge) && settings.toplineFoldMm === 0),
    backSeam,
    backClosed,
    sideSeam: parts.cut !== "back-seam",
    dogTail: backClosed && parts.backTop === "dog-tail" && edge !== "bagged" && !names.has("back strip"),
    threeLinings: names.has("heel pocket"),
    stiffenerOfLeather: stiff.counterMm >= leatherStiffenerMm,
    insoleOfLeather: settings.firstBoardMm >= leatherInsoleMm,
    puffOfLeather: settings.toePuffMm >= leatherPuffMm,
    heel: !made?.heel || made.heel.layers.length > 0 || names.has("split lift"),
    cement: cementOf(said),
    pairs,
    lasts: lastsOf(said, pairs),
    ...(feather && { nailedMm: feather.mm }),
  };
}
