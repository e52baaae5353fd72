import type { LandmarkName, MeasureName } from "./said.ts";

/** For who meets a word of the last for the first time: what it is, how it is found here, how with tape, pencil and callipers. */
export interface Help {
  readonly meaning: string;
  readonly found: string;
  readonly byHand: string;
}

// The ways by hand are common practice, taught in shoemaking classes and old handbooks; what is found here is defined in docs/method/last.md.

export const landmarkHelp: Readonly<Record<LandmarkName, Help>> = {
  toePoint: {
    meaning: "The foremost point of the feather line on the axis. Throat and vamp are measured back from it.",
    found: "the middle of that stretch of the feather line at the toe which runs square to the axis.",
    byHand: "stand the last on paper, hold a set square against the toe, and mark the feather edge where the front centre line meets it. On a crooked toe choose the axis so that both sides get the same lasting margin.",
  },
  seatPoint: {
    meaning: "The rearmost point of the feather line on the axis. Back height and lengths along the bottom start from it.",
    found: "the middle of that stretch of the feather line at the heel which runs square to the axis.",
    byHand: "hold a set square against the heel and mark the feather edge where the back centre line meets it.",
  },
  jointMedial: {
    meaning: "The widest place of the bottom on the inner side, where the big-toe joint lies. The joint girth is taken over it.",
    found: "the point of the inner feather line farthest from the axis, in the front half of the last.",
    byHand: "turn the last over and lay a straight edge along its inner side: the point of the feather edge that touches in front is the inner joint.",
  },
  jointLateral: {
    meaning: "The widest place of the bottom on the outer side, where the little-toe joint lies; it lies farther back than the inner one.",
    found: "the point of the outer feather line farthest from the axis, in the front half of the last.",
    byHand: "turn the last over and lay a straight edge along its outer side: the point of the feather edge that touches in front is the outer joint.",
  },
  treadPoint: {
    meaning: "Where the forepart touches the ground when the last stands at its own heel pitch. Heel pitch and toe spring are judged from it.",
    found: "the lowest point of the middle of the bottom, with the last stood up by its comb or by seat and tread.",
    byHand: "stand the last on a flat plate with a block of its heel height under the seat, slip thin paper under the forepart from both ends, and mark where it stops.",
  },
  vampPoint: {
    meaning: "Where the joint line crosses the front centre. A pump’s throat lies before it, or the foot’s bend will cut into the topline.",
    found: "the place of the front centre straight above the line between both joint points.",
    byHand: "lay the tape round the last over both joint points and mark where it crosses the front centre line; it lies about three tenths of the bottom length from the toe.",
  },
  waistPoint: {
    meaning: "The hollow of the front centre between vamp point and instep point.",
    found: "half way along the front centre from vamp point to instep point.",
    byHand: "halve the way between the two with a tape on the front centre line.",
  },
  instepPoint: {
    meaning: "The upper end of the useful front, on the cone. Instep and heel girth pass through it.",
    found: "a quarter of the bottom length behind the vamp point, along the front centre.",
    byHand: "measure a quarter of the bottom length from the vamp point up the cone with a tape.",
  },
  seatMedial: {
    meaning: "The widest place of the heel part on the inner side of the bottom.",
    found: "the point of the inner feather line farthest from the axis in the rear quarter.",
    byHand: "lay a straight edge along the inner side of the heel part and mark where the feather edge touches.",
  },
  seatLateral: {
    meaning: "The widest place of the heel part on the outer side of the bottom.",
    found: "the point of the outer feather line farthest from the axis in the rear quarter.",
    byHand: "lay a straight edge along the outer side of the heel part and mark where the feather edge touches.",
  },
  counterPoint: {
    meaning: "How high the stiffener has to hold the heel. The back of a pump stands near it.",
    found: "a fifth of the bottom length up the back from the seat point.",
    byHand: "measure a fifth of the bottom length up the back centre line with a tape, from the feather edge.",
  },
};

export const measureHelp: Readonly<Record<MeasureName, Help>> = {
  stickLength: {
    meaning: "Stick length: straight from the rearmost to the foremost place of the whole last, level with the ground.",
    found: "the extent of the scan along the axis, with the last standing at its heel pitch.",
    byHand: "lay the last in a size stick, or stand it between two squares on a straight edge and read the distance.",
  },
  lastLength: {
    meaning: "Last length: by tape along the bottom, from seat point to toe point. Shares like “a fifth” or “a quarter” are of this length.",
    found: "along the middle of the bottom between both points.",
    byHand: "press a tape along the middle of the bottom from feather edge to feather edge, into the hollow of the waist.",
  },
  jointGirth: {
    meaning: "Joint girth: round the last over both joint points, where the shoe holds the foot’s ball.",
    found: "a tape laid round the last upright over both joint points; it spans hollows as a tape does.",
    byHand: "lay the tape over both joint points and the vamp point, snug and without pull.",
  },
  waistGirth: {
    meaning: "Waist girth: round the last between joint and instep.",
    found: "a tape through the waist point, square to the front there.",
    byHand: "lay the tape round the slimmest place, through the waist point.",
  },
  instepGirth: {
    meaning: "Instep girth: round the last at the upper end of the useful front.",
    found: "a tape through the instep point, square to the front there.",
    byHand: "lay the tape through the instep point and round under the waist.",
  },
  heelGirth: {
    meaning: "Heel girth (short heel): from the seat point round over the instep point. It tells whether the foot gets in and is held.",
    found: "a tape laid through seat point and instep point.",
    byHand: "lay the tape under the rear end of the feather edge and over the instep point.",
  },
  ballWidth: {
    meaning: "Ball width: across the bottom at the joint.",
    found: "square to the axis, from the inner joint point to the outer one.",
    byHand: "callipers across the bottom, from feather edge to feather edge, square to the axis, over both joint points.",
  },
  seatWidth: {
    meaning: "Seat width: across the bottom at the heel.",
    found: "square to the axis, from the inner seat point to the outer one.",
    byHand: "callipers across the widest place of the heel part, from feather edge to feather edge.",
  },
  heelHeight: {
    meaning: "Heel height: how high the seat point stands above the ground at the pitch the last is built for.",
    found: "the height of the seat point, with the comb level, or seat and tread lying on their supports.",
    byHand: "raise the heel on blocks until the tread touches where it should, and measure under the seat point.",
  },
  toeSpring: {
    meaning: "Toe spring: how high the toe point stands above the ground at the same pitch. It lets the shoe roll.",
    found: "the height of the toe point.",
    byHand: "slide a wedge or coins under the toe while the last stands at its pitch.",
  },
  featherLength: {
    meaning: "The feather line’s length all round.",
    found: "along the feather line.",
    byHand: "stand a tape on its edge along the feather, all round.",
  },
  featherMedial: {
    meaning: "The feather line’s inner half, from seat point to toe point.",
    found: "along the feather line on the inner side.",
    byHand: "stand a tape on its edge along the inner feather.",
  },
  featherLateral: {
    meaning: "The feather line’s outer half, from seat point to toe point.",
    found: "along the feather line on the outer side.",
    byHand: "stand a tape on its edge along the outer feather.",
  },
  vampPointFromToe: {
    meaning: "How far the vamp point lies from the toe point. The throat has to lie before it.",
    found: "along the front centre, on the surface.",
    byHand: "tape along the front centre line from the feather edge at the toe to the vamp point.",
  },
};
