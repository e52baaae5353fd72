import type { BackTop, LiningCut, PartChoices, SeamKind, SockKind, UpperCut } from "#pieces/choices.ts";

/** What each choice is called inside its sentence. */
export const cutWords: Readonly<Record<UpperCut, string>> = {
  "back-seam": "whole, with a back seam",
  "inner-seam": "whole, with a seam at the inner waist",
  quarters: "as vamp and two quarters",
};
export const seamWords: Readonly<Record<SeamKind, string>> = {
  closed: "closed, sewn grain to grain",
  lapped: "lapped, one edge under the other",
  butted: "butted, edge to edge",
};
export const topWords: Readonly<Record<BackTop, string>> = {
  mitre: "mitred",
  notch: "notched beside the seam",
  "dog-tail": "finished with a dog-tail",
};
export const liningWords: Readonly<Record<LiningCut, string>> = {
  three: "vamp, quarters and a heel pocket",
  one: "one piece",
};
export const sockWords: Readonly<Record<SockKind, string>> = {
  full: "the whole insole",
  half: "the back half",
  heel: "the heel alone",
};

/** Why one chooses the one or the other. */
export const choiceWhy = {
  cut: [
    "A whole cut with a back seam shows no seam from the front, but lies on the hide as one large piece and is the hardest to last.",
    "With the seam at the inner waist the heel stays clean, and the seam lies where it is seen least.",
    "Vamp and quarters need less leather and take the hollow of the waist more easily; their seams are seen.",
  ],
  seam: [
    "A closed seam is thin and soft once it is rubbed down and taped.",
    "A lapped seam is the strongest and shows its stitches; the lap is skived under the upper piece.",
    "A butted seam adds no thickness, but holds by its zigzag and the tape beneath alone.",
  ],
  backSeam: [
    "Closed, rubbed down and taped, the back seam hardly shows under the heel of the stocking.",
    "Butted under a zigzag it lies flattest, and wants a strip of leather over it or a tape beneath.",
  ],
  backTop: [
    "A mitre mirrors the fold in the seam, so that the turned-over edge meets its own outline.",
    "A notch takes the leather out beside the seam, so that the fold does not lie four thick.",
    "A dog-tail is a tongue on the outer half that goes over the seam and points to the inside: it spreads the pull at the top of the back.",
  ],
  lining: [
    "In three, the heel pocket has no seam to rub the heel, and each part can be taken in where it lies.",
    "One piece is the quickest to cut, and has its seam at the back.",
  ],
  sock: [
    "A full sock covers the insole from heel to toe. A half sock ends behind the joint, where a whole one would curl.",
    "A heel sock hides the nails and shows the insole’s leather in front.",
  ],
} as const satisfies Partial<Record<keyof PartChoices, readonly string[]>>;

/** What may be added, each with or without. */
export const addedWords = {
  toeCap: { name: "toe cap", words: "a toe cap", why: "A second layer over the toe: it hides a seam or a scuff, and stiffens the tip." },
  strap: { name: "instep strap", words: "an instep strap", why: "Holds a pump that would slip at the heel; it takes the pull off the topline." },
  gore: { name: "elastic gore", words: "an elastic gore", why: "Lets a close topline open for the foot; sewn in where the strap or the side would else be tight." },
  bow: { name: "bow", words: "a bow", why: "Sewn on at the throat, where it also covers the end of the topline’s stitching." },
  sideLining: { name: "side lining", words: "a side lining", why: "A thin woven layer between upper and lining that keeps soft leather from stretching along the sides." },
  backStrip: { name: "back strip", words: "a strip over the back seam", why: "Covers the back seam and takes the pull at its top, where it would open first." },
} as const satisfies Partial<Record<keyof PartChoices, { readonly name: string; readonly words: string; readonly why: string }>>;
export type Added = keyof typeof addedWords;

/** Names of the choices, for the words of a change: "how the upper is cut". */
export const choiceNames: Readonly<Record<keyof PartChoices, string>> = {
  cut: "how the upper is cut",
  seam: "the kind of seam",
  backSeam: "the kind of back seam",
  backTop: "the top of the back seam",
  lining: "how the lining is cut",
  sock: "the sock",
  backStrip: "the back strip",
  toeCap: "the toe cap",
  strap: "the instep strap",
  gore: "the elastic gore",
  bow: "the bow",
  sideLining: "the side lining",
};
