import { dustMasks } from "./filters.ts";
import { practice, comesFirst, toolComesFirst, type CautionWords } from "./caution-words.ts";

export const heatCaution: CautionWords = {
  title: "Heat",
  short: "A hair dryer, no flame, no heat gun; no wet cement and no open tin in the room.",
  what: "Hot air, irons and hot wax burn the skin. Heat over cement that still smells can set the vapour on fire, or seals it in under a skin.",
  care: [
    "Never warm wet cement to dry it faster. Warm only cement that is dry all through, to wake it up: 60 to 80 °C at the surface, one to two minutes.",
    "Carry the open tin, brushes and rags out first, and air the room.",
    "Take a hair dryer; no flame, no heat gun, no stove. Keep it moving, a hand's breadth off.",
    "Lay hot tools on a stone, out of reach of children, and pull the plug. Leather scorches soon: try on a scrap.",
    "Cool a burn under running cool water for twenty minutes. Larger than a coin, white or blistered, on hand or face: to a doctor.",
  ],
  first: toolComesFirst,
  source: "That heat is only for dry cement: a maker's notes of a class on bonding; temperatures and cooling: from memory",
};

export const dustCaution: CautionWords = {
  title: "Dust of leather, board and cork",
  short: "Draw the dust off or work outdoors; mask P2 or FFP2.",
  what: "Fine dust stays in nose and lungs. Leather dust from years at buffing wheels is listed as causing cancer of the nose (IARC, volume 100C of 2012; from memory). Dust over dry cement carries cement with it.",
  care: [
    "Make less of it: cut and pare instead of sanding, sand by hand, damp what may get damp.",
    "Draw it off where it arises: a vacuum cleaner with a fine filter right beside the work, or work outdoors.",
    `Wear a dust mask of class P2 or FFP2 (EN 149, at least ${Math.round(dustMasks.FFP2 * 100)} % of a test dust held back) that closes over nose and chin. A beard lets dust in.`,
    "Wipe up damp or vacuum, do not sweep or blow. Wash your hands, and change the apron before you eat.",
    "Such a mask is for dust alone; against cement vapour it does nothing.",
  ],
  first: comesFirst("The safety data sheet of leather finish, board and cement"),
  source: `${practice}; dust measured in shoemaking: a study of 2012 (PubMed 22697031)`,
};

export const grindingCaution: CautionWords = {
  title: "Grinding, by wheel or by hand",
  short: "At a wheel: goggles, hair tied back, no loose sleeves, no gloves; no nail and no open cement near it. By hand: goggles.",
  what: "A wheel throws grit and bits of nail into the eyes and draws in hair, sleeves and strings with the hand behind them. Sparks from a nail set dust or vapour on fire.",
  care: [
    "Do it by hand where you can: rasp, glass and abrasive paper take longer and draw nothing in.",
    "No nail in the way of the wheel. No open cement in the room, and cement in the joint at least 45 minutes old (water-based some hours), better of yesterday.",
    "Guard on, dust drawn off. Hold the work on a rest, below the middle of the wheel, where it turns away from you.",
    "Wear goggles, at the rasp too. Hair tied back and covered; no loose sleeves, scarf, ring or gloves at a turning wheel.",
    "Wear a dust mask of class P2 or FFP2.",
    "Switch off, pull the plug and let it stand still before you change paper or clear it.",
  ],
  first: toolComesFirst,
  source: `${practice}; 45 minutes before sanding: a maker's notes of a class on bonding`,
};

export const feetCaution: CautionWords = {
  title: "The foot that wears it",
  short: "Feel the inside for tacks and ridges. Numb feet, diabetes, wounds or pain: to licensed practice.",
  what: "A ridge, a hard edge, a tack or too little room rubs a foot sore. Who does not feel it, with diabetes or numb feet, can get a wound that is slow to heal or costs the foot.",
  care: [
    "Ask before you measure: diabetes, numb or cold feet, wounds, swelling, pain, insoles by prescription. With any of these, shoes belong into licensed practice: doctor, podiatrist, orthopaedic shoemaker.",
    "A maker is no doctor: promise no relief, correct no foot, build nothing up against pain.",
    "Feel the whole inside with your hand, then with a stocking over it: no tack, no nail, no ridge, no hard end of shank, puff or stiffener.",
    "Try on at the end of the day, both feet, standing and walking; half an hour at home on a carpet first. Take off the shoe and look: red marks that stay after ten minutes mean that it presses.",
    "Leather and glue can make skin itch. Redness in the shape of the shoe: off with it, and to a doctor.",
  ],
  first: comesFirst("What a doctor or podiatrist says of the foot, the safety data sheets of leather and cement"),
  source: `${practice}; forgotten tacks: a maker's notes`,
};
