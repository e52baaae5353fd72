/** Tools of the bench, by the word the trade uses. */
export const toolIds = [
  "lasts", "last hook", "lasting pincers", "lasting hammer", "tack lifter", "closing hammer", "clicking knife", "skiving knife", "paring stone", "cutting board", "steel rule", "tape measure", "dividers", "awl", "silver pen",
  "scissors", "pinking snips", "bone folder", "glue brush", "glue pot", "half mask with organic-vapour filters", "goggles", "gloves", "dust mask", "apron", "thickness gauge",
  "sewing machine", "hand needles", "thread snips", "edge trimmer", "rasp", "abrasive paper", "glass", "burnishing bone", "edge iron", "heel block", "rubbing stick", "roller", "clamps", "bowl of water", "hair dryer", "French chalk", "hole punch", "marking strips", "scale square",
] as const;
export type ToolId = (typeof toolIds)[number];
