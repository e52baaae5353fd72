import type { PieceWords } from "./piece-group.ts";

/** The numbers of what may be added. */
export const extraWords: readonly PieceWords[] = [
  { name: "place of the strap", group: "extras", governs: /strap/, when: ({ strap }) => strap, words: "The strap sits {strapBehindThroatMm} behind the throat, along the topline." },
  { name: "strap", group: "extras", governs: /strap/, when: ({ strap }) => strap, words: "It is {strapWidthMm} wide with a fold of {strapFoldMm}; {strapUnderMm} lie under the inner side, {strapOverMm} beyond the outer." },
  { name: "gore", group: "extras", governs: /gore/, when: ({ gore }) => gore, words: "The gore opens {goreWideMm} at the topline and is {goreDeepMm} deep; the elastic goes {goreLapMm} under the leather." },
  { name: "bow", group: "extras", governs: /bow|knot/, when: ({ bow }) => bow, words: "The bow is {bowLongMm} long and {bowWideMm} high, its knot {knotWideMm} wide." },
  { name: "back strip", group: "extras", governs: /back strip/, when: ({ backStrip, cut }) => backStrip && cut !== "inner-seam", words: "The back strip is {backStripTopMm} wide at the topline and {backStripFeatherMm} at the feather line, with a fold of {backStripFoldMm}." },
  { name: "toe cap", group: "extras", governs: /toe cap/, when: ({ toeCap }) => toeCap, words: "The toe cap reaches {toeCapMm} back along the centre; its edge bows by {toeCapBowMm} and is folded by {toeCapFoldMm}." },
];
