import { practice, comesFirst, type CautionWords } from "./caution-words.ts";

/** What colours and finishes edges and leather. */
export const inkCaution: CautionWords = {
  title: "Edge ink, dye, wax and cream",
  short: "Spirit on the label: no flame, window open, mask with organic-vapour filters. Nitrile gloves, goggles; spray nothing.",
  what: "Dyes and inks with spirit give off vapour that burns and makes you dizzy, like cement's. Those with water hold preservatives and colours that can make skin itch or stain it for days. Some shoe creams and waxes hold turpentine, which many skins do not bear.",
  care: [
    "Take ink, dye and cream with water where you can; the window is open all the same.",
    "Where the label shows a flame or tells of spirit, alcohol, acetone or turpentine, take the care of solvent cement: moving air, no flame or spark, mask with organic-vapour filters, lid on, rags into a closed metal bin. Rags with oil or turpentine can catch fire by themselves.",
    "Wear nitrile gloves and goggles; splashed in the eye, hold it under running water for ten minutes and go to a doctor.",
    "Brush or dab, do not spray: mist goes deep into the lungs.",
    "Hot wax and a hot iron: the care for heat. Let a coat of ink or dye dry all through before anything hot comes near.",
    "Old dyes without a label are not for shoes that are worn on bare skin. A colour must not rub off on a damp white cloth.",
  ],
  first: comesFirst("The label and the safety data sheet of the product in your hand"),
  source: `${practice}; turpentine, preservatives and mist: from memory`,
};
