import { practice, comesFirst, type CautionWords } from "./caution-words.ts";
import { dustMaskWords, filterSource, vapourFilterWords } from "./filters.ts";
import { limits } from "./limits.ts";
import { restrictions, restrictionWords } from "./restrictions.ts";

/** Contact cement with solvent: the greatest hazard of this work. */
export const cementCaution: CautionWords = {
  title: "Solvent cement: vapour and fire",
  short: "Outdoors or under an exhaust; mask with organic-vapour filters (no dust mask), goggles, nitrile gloves; no flame or spark; lid on the tin.",
  what: "The vapour makes you dizzy and drowsy, and breathed often it can harm nerves, liver and an unborn child. It catches fire from a spark, also from a spark far off: it is heavier than air and creeps along the floor. n-Hexane gives off vapour that burns from −22 °C on (flash point −7 °F, USA, NIOSH, as looked up in November 2026).",
  care: [
    "Use less of it: paste or latex for linings, folds and stiffeners. At home take a water-based cement, or one low in toluene and n-hexane.",
    "Carry the vapour away from your face: work outdoors, or at a bench with an exhaust that leads into the open. Do not count on an open door. Coated parts dry out there too, not where anybody cooks, eats or sleeps.",
    "No flame, no cigarette, no spark, no heater, no heat gun near an open tin or a wet part. Keep a foam or CO₂ extinguisher within reach.",
    "Pour out little, close the tin at once, keep no more than a day's cement at the bench. Brushes and rags go into a closed metal bin.",
    vapourFilterWords,
    dustMaskWords,
    "Wear goggles that close all round, and nitrile gloves (0.2 mm or more); change gloves that got wet. A skin cream does not stand in for them.",
    "Who is pregnant, breast-feeding or has asthma asks a doctor before, and lets somebody else do this step. Keep children and animals away.",
    "Headache, dizzy, sick: close the tin, out into fresh air at once. If it does not pass, or some was swallowed, call a doctor or the poison centre and have the label at hand.",
  ],
  law: restrictions.map(restrictionWords),
  limits,
  first: comesFirst("The label and the safety data sheet of the product in your hand"),
  source: `${practice}; extraction: a maker's notes of a class on bonding; gloves, goggles, ventilation and fire: a technical sheet of a contact adhesive; vapour at shoe factories: studies of 1994 and 1999 (PubMed 7808346, 10590552); filters: ${filterSource}`,
};
