import type { LandmarkName, MeasureName } from "./said.ts";

/** What a maker should know about a landmark or a measure, in short plain sentences. */
export interface Help {
  /** As the trade says it. */
  readonly name: string;
  /** What it is. */
  readonly meaning: string;
  /** How it was found here. */
  readonly found: string;
  /** How a maker finds it with her hands and tools. */
  readonly byHand: string;
  /** A book or standard where one was read; else "common practice". */
  readonly source: string;
}

const practice = "common practice";
const golding = "common practice; agrees with F. Y. Golding, The Manufacture of Boots and Shoes, 1902";
const glossary = "a hand shoemakers' glossary of last points and measures (oneandawl.org)";
const lesson = "lessons in pattern-making (theshoebible.blogspot.com, italianfootwearsolution.com)";

export const landmarkHelp: Readonly<Record<LandmarkName, Help>> = {
  toePoint: {
    name: "toe point",
    meaning: "The foremost point of the feather edge, where the middle line of the last meets it.",
    found: "The middle of the stretch of the feather line that runs square across the toe. On a pointed toe that is its tip, on a square toe the middle of its front.",
    byHand: "Stick a strip of tape with a straight line on it from the middle of the toe up the cone. Where the line meets the feather edge is the toe point. On a crooked toe judge by eye: both halves should look equally wide.",
    source: glossary,
  },
  seatPoint: {
    name: "seat point",
    meaning: "The hindmost point of the feather edge, where the middle line of the back meets it.",
    found: "The middle of the stretch of the feather line that runs square across the back of the heel.",
    byHand: "Stick a tape with a straight line on it from the middle of the comb down the back. Where the line meets the feather edge is the seat point.",
    source: glossary,
  },
  jointMedial: {
    name: "inner joint point",
    meaning: "The widest point of the forepart on the inside, at the feather edge: the joint of the big toe lies over it.",
    found: "The point of the feather line farthest from the axis on the inside, between half and nine tenths of the length.",
    byHand: "Turn the last upside down and lay its inside against a straight edge or the edge of the table. Where it touches in front, mark it.",
    source: lesson,
  },
  jointLateral: {
    name: "outer joint point",
    meaning: "The widest point of the forepart on the outside, at the feather edge: the joint of the little toe lies over it. It lies farther back than the inner one.",
    found: "The point of the feather line farthest from the axis on the outside, between half and nine tenths of the length.",
    byHand: "Lay the outside of the last against a straight edge or the edge of the table. Where it touches in front, mark it.",
    source: lesson,
  },
  seatMedial: {
    name: "inner seat point",
    meaning: "The widest point of the heel seat on the inside, at the feather edge.",
    found: "The point of the feather line farthest from the axis on the inside, within the hindmost quarter of the length.",
    byHand: "Lay the inside of the last against a straight edge along its middle line, and slide it in. Where the seat touches first, mark it.",
    source: practice,
  },
  seatLateral: {
    name: "outer seat point",
    meaning: "The widest point of the heel seat on the outside, at the feather edge.",
    found: "The point of the feather line farthest from the axis on the outside, within the hindmost quarter of the length.",
    byHand: "Lay the outside of the last against a straight edge along its middle line, and slide it in. Where the seat touches first, mark it.",
    source: practice,
  },
  vampPoint: {
    name: "vamp point",
    meaning: "Where the joint line crosses the middle of the top. It is the place from which the throat of a shoe is judged.",
    found: "Where an upright plane through both joint points crosses the middle ridge. Where you moved it, the joint tape is laid through your point.",
    byHand: "Lay a tape over the last from one joint point to the other and mark where it crosses the middle line. Rules of thumb say 70 or 75 % of the length from the heel; they disagree, so trust your own last.",
    source: golding,
  },
  waistPoint: {
    name: "waist point",
    meaning: "On the middle of the top, half way between vamp point and instep point, where the last is slimmest.",
    found: "Half way along the middle ridge between vamp point and instep point.",
    byHand: "Measure from vamp point to instep point along the middle line with a tape and mark the half.",
    source: practice,
  },
  instepPoint: {
    name: "instep point",
    meaning: "The upper end of the useful front of the last: about where the laces of a shoe would end.",
    found: "On the middle ridge, a quarter of the last length behind the vamp point.",
    byHand: "Take the last length along the bottom, divide it by four, and step it up the middle line from the vamp point.",
    source: golding,
  },
  counterPoint: {
    name: "counter point",
    meaning: "A mark on the back of the heel from which the height of the back is judged.",
    found: "A fifth of the last length up the back curve from the seat point.",
    byHand: "Take the last length along the bottom, divide it by five, and step it up the back from the feather edge. Some makers add 3 mm.",
    source: glossary,
  },
  treadPoint: {
    name: "tread point",
    meaning: "Where the forepart of the bottom touches the ground when the last stands at its own heel height.",
    found: "The lowest point of the middle of the bottom, under the joints.",
    byHand: "Stand the last on a flat plate with a block under the heel, as high as the heel it is made for. Slip paper under from the front and from behind: it stops at the tread point.",
    source: practice,
  },
};

export const measureHelp: Readonly<Record<MeasureName, Help>> = {
  stickLength: {
    name: "stick length",
    meaning: "The straight length of the whole last, level with the ground, from the back of the heel to the front of the toe.",
    found: "The extent of the last along its axis.",
    byHand: "Use a size stick, or stand the last between two set squares on a table and measure between them.",
    source: glossary,
  },
  lastLength: {
    name: "last length",
    meaning: "The length along the bottom, following its hollows. The quarter and fifth of the length that rules speak of are of this one.",
    found: "Along the middle of the bottom from seat point to toe point, pressed into every hollow.",
    byHand: "Lay a tape along the middle of the bottom from seat point to toe point and press it on.",
    source: glossary,
  },
  jointGirth: {
    name: "joint girth",
    meaning: "Round the last over both joint points: the measure that says how wide a shoe is.",
    found: "A tape drawn tight in the upright plane through both joint points. It does not dip into hollows.",
    byHand: "Lay the tape over both joint points and draw it snug. A tape that is free to lean forward settles some 6 mm shorter: hold it upright to compare.",
    source: lesson,
  },
  waistGirth: {
    name: "waist girth",
    meaning: "Round the slimmest part, half way between joint and instep.",
    found: "A tape drawn tight through the waist point, square to the ridge there.",
    byHand: "Lay the tape through the waist point, square to the slope of the top, and draw it snug.",
    source: practice,
  },
  instepGirth: {
    name: "instep girth",
    meaning: "Round the last at the instep point. On most lasts about 10 mm more than the joint girth.",
    found: "A tape drawn tight through the instep point, square to the ridge there.",
    byHand: "Lay the tape through the instep point, square to the slope of the top, and draw it snug.",
    source: golding,
  },
  heelGirth: {
    name: "heel girth (short heel)",
    meaning: "From under the heel round over the instep: a shoe without laces is held by it.",
    found: "A tape drawn tight through seat point and instep point.",
    byHand: "Lay the tape under the heel at the feather edge and over the instep point, and draw it snug.",
    source: practice,
  },
  ballWidth: {
    name: "ball width",
    meaning: "The width of the bottom at the joints.",
    found: "Between both joint points, square to the axis.",
    byHand: "Turn the last over. Hold a calliper square to the middle line over the two joint points and read it at the feather edge.",
    source: practice,
  },
  seatWidth: {
    name: "seat width",
    meaning: "The width of the bottom at the heel seat.",
    found: "Between both seat points, square to the axis.",
    byHand: "Turn the last over and set a calliper across the widest part of the seat, at the feather edge.",
    source: practice,
  },
  heelHeight: {
    name: "heel height",
    meaning: "How high the seat stands over the ground at the pitch that the last is made for.",
    found: "The height of the seat point, with the last standing on its tread and its comb or its seat level.",
    byHand: "Stand the last on a flat plate and put blocks under the heel until the tread point touches and the comb is level. Measure from plate to feather edge.",
    source: glossary,
  },
  toeSpring: {
    name: "toe spring",
    meaning: "How far the toe stands off the ground. The lower the heel, the more of it a shoe needs to roll well.",
    found: "The height of the toe point, with the last standing at its pitch.",
    byHand: "Stand the last at its pitch and slip a wedge gauge under the toe; read it at the feather edge.",
    source: glossary,
  },
  featherLength: {
    name: "feather line, all round",
    meaning: "The length of the whole feather edge: as long as the net edge of the upper and as the rim of the insole.",
    found: "Along the feather line that was found, all round.",
    byHand: "Run a strip of narrow tape along the feather edge all round, cut it where it meets and measure it flat.",
    source: practice,
  },
  featherMedial: {
    name: "feather line, inside",
    meaning: "The inner half of the feather edge, from seat point to toe point.",
    found: "Along the feather line on the inside.",
    byHand: "Run narrow tape along the edge from seat point to toe point on the inside and measure it flat.",
    source: practice,
  },
  featherLateral: {
    name: "feather line, outside",
    meaning: "The outer half of the feather edge, from seat point to toe point.",
    found: "Along the feather line on the outside.",
    byHand: "Run narrow tape along the edge from seat point to toe point on the outside and measure it flat.",
    source: practice,
  },
  vampPointFromToe: {
    name: "toe point to vamp point",
    meaning: "How far the vamp point lies from the toe, over the top. The throat of a pump lies in front of it.",
    found: "Along the middle ridge from toe point to vamp point.",
    byHand: "Lay a tape along the middle line over the toe from toe point to vamp point.",
    source: golding,
  },
};
