import { practice, comesFirst, type CautionWords } from "./caution-words.ts";

/** Latex and water-based cement: no solvent to smell and burn, and still nothing for bare hands and closed windows. */
export const waterGlueCaution: CautionWords = {
  title: "Latex and water-based cement",
  short: "Window open, goggles, nitrile gloves. Who reacts to rubber takes no latex. Keep it from frost and dirt.",
  what: "Latex of natural rubber can bring out an allergy, from itching to shortness of breath, in the maker or in who wears the shoe. Latex is kept with ammonia, which stings eyes, nose and lungs. Other water-based cements may hold a little solvent, resins and preservatives, which make some skins itch. In the eye any of them sets and sticks.",
  care: [
    "Ask before you begin, yourself and who will wear the shoe: itching or swelling from rubber gloves, balloons or plasters. Then no latex: paste, or a cement whose maker says that no natural rubber is in it.",
    "Open a window and keep your face away from the open tin, here as at any other glue. Work in moving air all the while and as it dries: what has no strong smell is breathed all the same, and a dust mask holds back neither ammonia nor solvent. With asthma ask a doctor before.",
    "Take a cement of one part. Hardeners of two-part kinds mostly hold isocyanates, which can bring out asthma that stays; in the European Union whoever works with them must be trained (REACH Regulation (EC) 1907/2006, Annex XVII, entry 74, since August 2023; from memory).",
    "Wear goggles and nitrile gloves (no latex gloves). Wash skin with water and soap before the glue dries on it; pull nothing off dry.",
    "Splashed in the eye: hold it under running water for at least ten minutes, lids open, and go to a doctor. Swallowed, or hard to breathe: emergency call, with the label at hand.",
    "Warm a coat that is dry, by a hair dryer, and air the room then too. Dried cement burns like rubber: no flame.",
    "Keep the tin closed, between 5 and 30 °C: frost spoils it, and so do bits of leather and a dirty brush. Away from children and food. No copper or brass in ammonia's reach: it stains leather green.",
    "Wash brushes in water before they dry. Leftovers go where your town takes paint, not down the drain.",
  ],
  first: comesFirst("The label and the safety data sheet of the product in your hand"),
  source: `${practice}; allergy, ammonia, hardeners, frost and times: from memory`,
};
