/** Tools of the bench, by the word the trade uses. */
export const toolIds = [
  "lasts", "last stand", "last hook", "lasting pincers", "lasting hammer", "tack lifter", "nippers", "nail set", "closing hammer", "lapstone",
  "clicking knife", "skiving knife", "paring stone", "sharpening stone", "strop", "cutting board", "steel rule", "tape measure", "dividers", "awl", "silver pen", "pencil",
  "scissors", "pinking snips", "bone folder", "glue brush", "glue pot", "paste brush", "metal bin", "fire extinguisher", "first aid box",
  "half mask with organic-vapour filters", "goggles", "gloves", "dust mask", "apron", "thickness gauge",
  "sewing machine", "hand needles", "thread snips", "edge trimmer", "rasp", "wire brush", "abrasive paper", "glass", "burnishing bone", "edge iron", "heel block", "rubbing stick", "roller", "clamps", "weights",
  "bowl of water", "hair dryer", "French chalk", "hole punch", "marking strips", "scale square", "polishing cloth",
  "cut-resistant glove", "vacuum cleaner", "level plate",
  "sheet glue", "masking tape", "bandages", "edge wax", "shoe cream", "crepe rubber", "tissue paper", "shoe box",
] as const;
export type ToolId = (typeof toolIds)[number];
