import type { ToolWords } from "./tool-need.ts";

/** Small things that are used up, or lie in the house already. */
export const usedUpTools = {
  "sheet glue": { use: "To stick the printed sheets to card.", standIn: "A glue stick, or cement for paper; nothing watery: wet paper grows.", must: true, buy: "first" },
  "masking tape": { use: "To hold cards to the last, and to guard the upper from knife, rasp and colour. It comes off without taking the finish: try it on a scrap.", standIn: "Painter's tape; to hold cards, pins.", must: true, buy: "first" },
  bandages: { use: "To bind damp insoles to the lasts: about two metres for each, as broad as three fingers.", standIn: "Strips of an old sheet, or of a bicycle's inner tube.", must: true, buy: "first" },
  "edge wax": { use: "To fill and seal sole edges after their colour, before they are burnished.", standIn: "Beeswax; a candle blooms white.", must: false, buy: "later" },
  "shoe cream": { use: "To feed and polish the finished upper.", standIn: "A dry brush, on leather that shines by itself.", must: false, buy: "first" },
  "crepe rubber": { use: "To rub dried cement off the upper.", standIn: "A ball of dried cement or latex, rolled with a finger.", must: false, buy: "first" },
  "level plate": { use: "To see whether both shoes stand without rocking.", standIn: "A pane of thick glass or a stone worktop.", must: false, buy: "later" },
  "tissue paper": { use: "To stuff the toes of the finished pair and to wrap it.", standIn: "Unprinted packing paper.", must: false, buy: "later" },
  "shoe box": { use: "To keep the pair from dust and light, and let it breathe.", standIn: "A cloth bag.", must: false, buy: "later" },
} as const satisfies Readonly<Record<string, ToolWords>>;
