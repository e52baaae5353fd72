import { capital } from "#base/listed.ts";
import { isFolded, type Chosen } from "#pieces/choices.ts";
import { bottomWords } from "./piece-words-bottom.ts";
import { extraWords } from "./piece-words-extras.ts";
import type { PieceGroup, PieceWords } from "./piece-group.ts";

const outer = /^(upper|vamp|(inner|outer) quarter)$/;
const outerOrNet = /^(upper|vamp|(inner|outer) quarter)(, net)?$/;
const lining = /^((vamp|(inner|outer) quarter) lining|lining|heel pocket)$/;
/** Which of them have the toe, and which waist and heel. */
const toeward = /^(upper|vamp)( lining)?$|^lining$/;
const heelward = /^(upper|lining)$|^(inner|outer) quarter( lining)?$|^heel pocket$/;
const upperAndLining = new RegExp(`${outer.source}|${lining.source}`);

export const hasBackSeam = ({ cut }: Chosen): boolean => cut !== "inner-seam";
/** At the inner waist, or at both sides. */
export const hasSideSeam = ({ cut }: Chosen): boolean => cut !== "back-seam";
const closedBack = (c: Chosen): boolean => hasBackSeam(c) && c.backSeam === "closed";
const closedSide = (c: Chosen): boolean => hasSideSeam(c) && c.seam === "closed";
const lapped = (c: Chosen): boolean => hasSideSeam(c) && c.seam === "lapped";
const inThree = ({ lining }: Chosen): boolean => lining === "three";

/** What the numbers of the pieces say, in the order of the work. */
export const pieceWords: readonly PieceWords[] = [
  { name: "lasting margin, forepart", group: "lasting margin", governs: toeward, words: "Under the feather line the upper reaches {lastingToeMm} at the toe, {lastingToeSidesMm} beside it, {lastingForepartMm} to the joint." },
  { name: "lasting margin, waist and heel", group: "lasting margin", governs: heelward, words: "It reaches {lastingOuterWaistMm} at the outer waist, {lastingInnerWaistMm} at the inner, and {lastingHeelMm} at the heel." },
  { name: "skiving of the lasting edge", group: "lasting margin", governs: /^(upper|vamp)$/, words: "At the toe the lasting edge is skived {skiveToeMm} wide." },

  { name: "place of the inner seam", group: "topline and seams", governs: outerOrNet, when: ({ cut }) => cut === "inner-seam", words: "The inner seam meets the feather line {innerSeamBeforeBreastMm} before the heel breast, and stays {seamClearOfJointMm} clear of the joint." },
  { name: "place of the side seams", group: "topline and seams", governs: outerOrNet, when: ({ cut }) => cut === "quarters", words: "The side seams leave the topline {sideSeamBehindThroatMm} behind the throat, slant back by {sideSeamSlantMm}, and stay {seamClearOfJointMm} clear of the joint." },
  { name: "fold of the topline", group: "topline and seams", governs: outer, when: ({ edge }) => isFolded(edge), words: "The topline folds over by {toplineFoldMm}; it is skived twice as wide and {skiveFoldMoreMm} more." },
  { name: "bagged topline", group: "topline and seams", governs: upperAndLining, when: ({ edge }) => edge === "bagged", words: "Upper and lining are sewn together {toplineBagMm} from the topline, and turned." },
  { name: "binding, turned in", group: "topline and seams", governs: /binding/, when: ({ edge }) => edge === "bound", words: "The binding strip is {bindingBoundMm} wide and {bindingThickMm} thick." },
  { name: "binding, wrapped", group: "topline and seams", governs: /binding/, when: ({ edge }) => edge === "wrapped", words: "The binding strip is {bindingWrappedMm} wide and {bindingThickMm} thick." },
  { name: "closed back seam", group: "topline and seams", governs: /^(upper|(inner|outer) quarter)$/, when: closedBack, words: "The closed back seam takes {backSeamMm} on each edge." },
  { name: "dog-tail", group: "topline and seams", governs: /^(upper|outer quarter)$/, when: (c) => closedBack(c) && c.backTop === "dog-tail", words: "The dog-tail is {dogTailLongMm} long and {dogTailWideMm} wide." },
  { name: "closed seam", group: "topline and seams", governs: outer, when: closedSide, words: "The closed seam takes {seamMm} on each edge." },
  { name: "lap", group: "topline and seams", governs: outer, when: lapped, words: "Under the vamp’s edge lie {lapUnderMm}, skived {skiveLapMm} wide; the edge itself is folded by {lapFoldMm}, where it is raw skived {skiveRawMm} wide." },
  { name: "skiving of closed seams", group: "topline and seams", governs: outer, when: (c) => closedBack(c) || closedSide(c), words: "Beside a closed seam the leather is skived {skiveSeamMm} wide." },
  { name: "tape over seams", group: "topline and seams", governs: /tape/, when: (c) => closedBack(c) || closedSide(c) || !inThree(c), words: "The tape over a seam is {seamTapeMm} wide." },
  { name: "tape in the fold", group: "topline and seams", governs: /tape/, when: (c) => c.edge === "taped" || lapped(c), words: "The tape in a fold is {foldTapeMm} wide." },
  { name: "stitches", group: "topline and seams", governs: outer, words: "Stitches run {stitchInMm} inside an edge." },
  { name: "ends of strips", group: "topline and seams", governs: /tape|binding/, words: "Tapes and strips are cut {stripEndsMm} longer at each end." },
  { name: "thickness of the upper", group: "topline and seams", governs: new RegExp(`${upperAndLining.source}|^outsole$`), words: "The upper is {upperThicknessMm} thick." },

  { name: "lining edges", group: "lining", governs: lining, words: "The lining is {liningThicknessMm} thick and stands {liningTrimMm} above the topline, to be trimmed; its lasting margin is {liningLastingShorterMm} shorter than the upper’s." },
  { name: "lining at the toe", group: "lining", governs: /^(vamp )?lining$/, words: "At the toe the lining is {liningToeInMm} smaller." },
  { name: "lining at the back", group: "lining", governs: /^(lining|heel pocket)$/, words: "At the back the lining is taken in by {liningBackInTopMm} at the topline, {liningBackInMiddleMm} halfway and {liningBackInFeatherMm} at the feather line." },
  { name: "end of the vamp lining", group: "lining", governs: /^(vamp|(inner|outer) quarter) lining$/, when: inThree, words: "The vamp lining ends {liningJointMm} behind the throat along the topline, and {liningJointBehindBallMm} behind the ball along the feather line." },
  { name: "joints of the lining", group: "lining", governs: lining, when: inThree, words: "The lining’s joints lap by {liningLapMm} and stay {liningClearMm} clear of the upper’s seams." },
  { name: "heel pocket", group: "lining", governs: /heel pocket|quarter lining/, when: inThree, words: "The heel pocket reaches {liningPocketTopMm} along the topline and {liningPocketWingMm} along the feather line." },

  { name: "toe puff", group: "stiffening", governs: /^(toe puff|outsole|upper|vamp)$/, words: "The toe puff is {toePuffMm} thick." },
  { name: "edges of the toe puff", group: "stiffening", governs: /^toe puff$/, words: "It reaches {puffLastingMm} under the feather line, and its ends are rounded by {puffRoundMm}." },
  { name: "edges of the stiffener", group: "stiffening", governs: /^stiffener$/, words: "The stiffener reaches {counterLastingMm} under the feather line; its ends lean back by {counterRakeMm} and are rounded by {counterRoundMm}." },
  { name: "side lining", group: "stiffening", governs: /side lining$/, when: ({ sideLining }) => sideLining, words: "The side lining is {sideLiningMm} thick, stands {sideLiningHeightMm} high, at least {sideLiningBelowMm} below the topline, and lies {sideLiningLapMm} over stiffener and puff." },
  { name: "second tape", group: "stiffening", governs: /tape/, words: "At the flanks lies a second tape {flankTapeMm} wide, {flankTapeReachMm} to either side of the lowest place." },
  ...bottomWords,
  ...extraWords,
];

/** What a number belongs to, by its name alone: the first that fits. */
const byKey: readonly (readonly [RegExp, PieceGroup, RegExp])[] = [
  [/^lasting/, "lasting margin", upperAndLining],
  [/^(strap|gore|bow|knot|toeCap|cap|backStrip|button|buckle)/, "extras", /strap|gore|bow|cap|strip/],
  [/lining|pocket/i, "lining", lining],
  [/^(counter|stiffener|puff|toePuff|side|tape|flank)/, "stiffening", /stiffener|toe puff|side lining|tape/],
  [/^(lift|heel|topPiece|splitLift|breast)/, "heel", /lift|top piece/],
  [/insole|sole|sock|shank|filler|board|second|margin/i, "bottom", /insole|outsole|sock|shank|filler|board/],
  [/./, "topline and seams", outer],
];

/** A plain sentence for a number that has none of its own. */
export function fallbackWords(key: string, name: string): PieceWords {
  const [, group, governs] = byKey.find(([at]) => at.test(key))!;
  return { name, group, governs, words: `${capital(name)}: {${key}}.` };
}
