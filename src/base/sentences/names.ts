// What landmarks, measures and halves are called inside a sentence.

const measureNames: Readonly<Record<string, string>> = {
  stickLength: "stick length",
  jointGirth: "joint girth",
  waistGirth: "waist girth",
  instepGirth: "instep girth",
  heelGirth: "heel girth",
  ballWidth: "ball width",
  seatWidth: "seat width",
  heelHeight: "heel height",
  toeSpring: "toe spring",
  lastLength: "last length",
  featherLength: "feather line's length",
  featherMedial: "feather line's inner half",
  featherLateral: "feather line's outer half",
  vampPointFromToe: "way from toe point to vamp point",
};
const landmarkNames: Readonly<Record<string, string>> = {
  toePoint: "toe point",
  seatPoint: "seat point",
  jointMedial: "inner joint point",
  jointLateral: "outer joint point",
  seatMedial: "inner seat point",
  seatLateral: "outer seat point",
  vampPoint: "vamp point",
  waistPoint: "waist point",
  instepPoint: "instep point",
  counterPoint: "counter point",
  treadPoint: "tread point",
};

export const landmarkName = (m: string): string => landmarkNames[m] ?? m;
export const measureName = (m: string): string => measureNames[m] ?? m;
/** Inner is the side of the big toe. */
export const halfName = (half: string): string => (half === "medial" ? "inner" : "outer");
