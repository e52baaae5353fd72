import type { MeasureName } from "#last/said.ts";

/** What each is called in a field and in the words for a change. */
export const readingNames: Readonly<Record<MeasureName, string>> = {
  stickLength: "stick length",
  lastLength: "last length along the bottom",
  jointGirth: "joint girth",
  waistGirth: "waist girth",
  instepGirth: "instep girth",
  heelGirth: "heel girth",
  ballWidth: "ball width",
  seatWidth: "seat width",
  heelHeight: "heel height",
  toeSpring: "toe spring",
  featherLength: "feather line all round",
  featherMedial: "feather line on the inner side",
  featherLateral: "feather line on the outer side",
  vampPointFromToe: "vamp point from the toe",
};
