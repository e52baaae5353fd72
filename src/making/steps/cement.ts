import type { Wait } from "./step.ts";
import type { ToolId } from "../tools/tools.ts";

/** What is at hand whenever a tin of contact cement is open. */
export const cementTools: readonly ToolId[] = ["glue brush", "glue pot", "half mask with organic-vapour filters", "goggles", "gloves", "metal bin", "fire extinguisher"];

const labelFirst = "the label of your cement comes first";

/** A first coat on leather or board: it sinks in and only has to be dry. */
export const firstCoat = (what: string): Wait => ({
  leastMin: 10,
  wellMin: 30,
  what,
  source: `10 minutes by a note on adhesives for leather, 30 by an overview of gluing from the repair trade; ${labelFirst}`,
});

/** The coat that sticks: dry to the finger, and still open when the faces meet. */
export const lastCoat = (what: string): Wait => ({
  leastMin: 10,
  wellMin: 15,
  mostMin: 30,
  what,
  source: `10 to 15 minutes by trade guides on contact adhesives, one of which has it open for more than 20 after that; notes of a class on bonding wait 30 to 45; ${labelFirst}`,
});

/** Until a bond may be pulled at or sanded. */
export const bondHolds = (what: string, wellMin: number): Wait => ({
  leastMin: 45,
  wellMin,
  what,
  source: `strength builds over 30 to 40 minutes; at least 45 before sanding, better overnight (notes of a class on bonding); ${labelFirst}`,
});

/** A night between two days at the bench, minutes. */
export const overnightMin = 12 * 60;

export const dryToTouch = "The back of a finger comes away dry, without a thread of cement.";
