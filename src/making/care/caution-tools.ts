import { underFootMm } from "../needs/nailed-lifts.ts";
import { practice, toolComesFirst, type CautionWords } from "./caution-words.ts";

export const knifeCaution: CautionWords = {
  title: "Knives",
  short: "Sharp knife, cut away from you, the other hand behind the edge.",
  what: "A knife that slips cuts the holding hand or the thigh. A blunt one slips first, because you press.",
  care: [
    "Keep it sharp: strop before each piece, hone when it drags. It should cut under its own weight and a light hand.",
    "Cut away from yourself, with the other hand behind the edge. Skive away from the hand that holds.",
    "Lay the work flat on a board or stone, never on your knee. Stand or sit so that a slip goes into the air.",
    "Wear a cut-resistant glove on the holding hand, never on the one that holds the knife, and an apron that covers the thighs. Goggles where you trim soles and lifts: a blade that is pried breaks, and its tip flies.",
    "Put it down with the guard on, never on the table's edge. Do not catch a falling knife, do not hand it over blade first.",
    "Press on a cut, hold it up. Deep, gaping, numb or a finger that will not bend: to a doctor at once.",
  ],
  first: toolComesFirst,
  source: practice,
};

export const machineCaution: CautionWords = {
  title: "Sewing machine",
  short: "Foot off the pedal and machine off before your fingers go near the needle.",
  what: "The needle goes through a finger as it goes through leather. It can break, and the pieces fly.",
  care: [
    "Feet off the pedal, and the machine switched off, before you thread, change needle or foot, oil or clear a jam.",
    "Keep the finger guard on. Fingers stay beside the foot, never in front of the needle.",
    "Turn the wheel by hand where it is thick or the curve is tight. Needle and thread fit the stack, so that nothing breaks.",
    "Wear glasses that close at the sides. Tie hair back; no scarf, no loose sleeves, no rings.",
    "Count the pieces of a broken needle before you go on: one left in the shoe finds the foot.",
  ],
  first: toolComesFirst,
  source: practice,
};

export const hammerCaution: CautionWords = {
  title: "Hammer, tacks and nails",
  short: "Glasses on. Count the tacks in, count them out, feel the inside.",
  what: "Tacks spring off and hit the eye, the hammer hits the thumb, tacks from the mouth are swallowed. A forgotten tack comes through the insole into the foot.",
  care: [
    "Wear glasses that close at the sides as long as you drive, pull or cut nails.",
    "Count: so many tacks went in, so many must come out. Write the number on the last. Before the sole goes on, and again when the last is out, feel the whole inside with a spoon or a magnet, then with your hand.",
    "Hold a tack with pincers or between two fingers low down, tap first, then drive. Never with a cracked hammer face or a loose head.",
    "Keep tacks in a dish, not between your lips. Sweep them up before anybody walks there without shoes.",
    `Heel nails end inside the shoe, ${underFootMm} mm or more below the foot: take the lengths that the list of what to buy tells, never a longer one. Then feel inside for points, and clinch or file what you find.`,
  ],
  first: toolComesFirst,
  source: `${practice}; forgotten tacks and staples: a maker's notes`,
};

export const pincersCaution: CautionWords = {
  title: "Lasting pincers",
  short: "Last held fast, pull to the side of your face, never toward it.",
  what: "The leather tears or the jaws slip, and your hand flies into your face or the last off your lap. Jaws and the pincers' hammer pinch skin. Hours of pulling hurt wrist and thumb.",
  care: [
    "Hold the last fast: in a stand, or under a strap over your thigh.",
    "Pull to the side of your face, never toward it. Grip a good 8 mm of leather and pull just past tight, without jerking.",
    "Wear glasses that close at the sides while tacks stand about.",
    "Change hands, stop after each row of drafts, stretch the fingers. Pain that stays is for a doctor.",
  ],
  first: toolComesFirst,
  source: practice,
};
