import type { PieceWords } from "./piece-group.ts";

/** The numbers of bottom and heel. */
export const bottomWords: readonly PieceWords[] = [
  { name: "insole and sock", group: "bottom", governs: /insole|sock/, words: "The insole lies {insoleInMm} inside the feather line, the sock {sockInMm} inside the insole." },
  { name: "half sock", group: "bottom", governs: /sock/, when: ({ sock }) => sock === "half", words: "The half sock ends {sockBehindMm} behind the joint, its front rounded by {sockRoundMm}." },
  { name: "heel sock", group: "bottom", governs: /sock/, when: ({ sock }) => sock === "heel", words: "The heel sock goes {sockBeyondMm} beyond the heel’s breast, its front rounded by {sockRoundMm}." },
  { name: "boards", group: "bottom", governs: /insole/, words: "The insole is {firstBoardMm} thick, the second board {secondBoardMm}; that ends {secondBehindMm} behind the joint and is skived {secondSkiveMm} wide at its front." },
  { name: "shank", group: "bottom", governs: /shank/, words: "The shank is {shankMm} long, {shankWideMm} wide and {shankThickMm} thick; it stays {shankFrontMm} short of the joint line and {shankRearMm} short of the seat’s edge." },
  { name: "sole edge", group: "bottom", governs: /outsole/, words: "The sole is {soleMm} thick. It stands out by {soleFinishForepartMm} at the forepart, {soleFinishWaistMm} at the waist and {soleFinishHeelMm} at the heel, beyond what lies on the last." },
  { name: "trimmed lasting margin", group: "bottom", governs: /filler|outsole/, words: "Of the lasting margin {marginLeftMm} are left after trimming, and in it {stiffLeftMm} of stiffener and puff." },
  { name: "split lift", group: "heel", governs: /split lift/, words: "The split lift is cut from leather {splitLiftMm} thick, {splitLiftWideMm} wide from the edge inward." },
  { name: "lifts and top piece", group: "heel", governs: /^lift|top piece/, words: "Each lift is {liftMm} thick, the top piece {topPieceMm}." },
  { name: "shape of the heel", group: "heel", governs: /lift|top piece/, words: "Lifts are cut {heelOverMm} beyond the seat; the heel runs in by {heelTaperMm} toward the ground, and its breast is hollow by {breastHollowMm}." },
];
