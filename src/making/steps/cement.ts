import type { HazardId } from "../care/hazards.ts";
import type { GoodId } from "../goods.ts";
import type { Cement } from "../needs/cement-choice.ts";
import type { ToolId } from "../tools/tools.ts";
import type { Wait } from "./step.ts";

const spreading: readonly ToolId[] = ["glue brush", "glue pot"];

/** What is at hand whenever a tin of the cement is open; what is worn against it comes with the hazard. */
export const cementTools: Readonly<Record<Cement, readonly ToolId[]>> = {
  "contact cement": [...spreading, "metal bin", "fire extinguisher"],
  "water-based cement": [...spreading, "bowl of water"],
};

/** What can hurt at a step that takes these goods, by what is spread alone. */
export const glueHazards = (goods: readonly GoodId[]): readonly HazardId[] => [
  ...(goods.includes("contact cement") ? (["solvent cement"] as const) : []),
  ...(goods.includes("water-based cement") || goods.includes("latex") ? (["water-based glue"] as const) : []),
  ...(goods.includes("edge finish") ? (["ink and dye"] as const) : []),
];

const labelFirst = "the label of your cement comes first";
const fromMemory = `common practice, no source; ${labelFirst}`;

/** A first coat on leather or board: it sinks in and only has to be dry. */
export const firstCoat = (cement: Cement, what: string): Wait =>
  cement === "contact cement"
    ? { leastMin: 10, wellMin: 30, what, source: `10 minutes by a note on adhesives for leather, 30 by an overview of gluing from the repair trade; ${labelFirst}` }
    : { leastMin: 30, wellMin: 45, what, source: `30 to 60 minutes, until it is clear: ${fromMemory}` };

/** The coat that sticks: dry to the finger, and still open when the faces meet. */
export const lastCoat = (cement: Cement, what: string): Wait =>
  cement === "contact cement"
    ? { leastMin: 10, wellMin: 15, mostMin: 30, what, source: `10 to 15 minutes by trade guides on contact adhesives, one of which has it open for more than 20 after that; notes of a class on bonding wait 30 to 45; ${labelFirst}` }
    : { leastMin: 30, wellMin: 45, mostMin: 4 * 60, what, source: `30 to 60 minutes, until it is clear, then open for hours: ${fromMemory}` };

/** Until a bond may be pulled at or sanded. */
export const bondHolds = (cement: Cement, what: string, wellMin: number): Wait =>
  cement === "contact cement"
    ? { leastMin: 45, wellMin, what, source: `strength builds over 30 to 40 minutes; at least 45 before sanding, better overnight (notes of a class on bonding); ${labelFirst}` }
    : { leastMin: 2 * 60, wellMin: Math.max(wellMin, 3 * 60), what, source: `slower than solvent cement, since the water has to leave: ${fromMemory}` };

/** The same wait, with what else has to be said of where it comes from. */
export const withSource = (wait: Wait, more: string): Wait => ({ ...wait, source: `${wait.source}; ${more}` });

/** Before anybody walks on it. */
export const bondFull = (cement: Cement, what: string): Wait => ({
  leastMin: 24 * 60,
  wellMin: 48 * 60,
  what,
  source: cement === "contact cement" ? `24 to 48 hours by notes of a class on bonding; ${labelFirst}` : fromMemory,
});

/** A night between two days at the bench, minutes. */
export const overnightMin = 12 * 60;

/** How to tell that a coat is dry enough to be pressed. */
export const dryToTouch: Readonly<Record<Cement, string>> = {
  "contact cement": "The back of a finger comes away dry, without a thread of cement.",
  "water-based cement": "It is clear all over, no white spot left, and the back of a finger comes away dry.",
};

/** How two coats that are dry are brought together, where that wants words. */
export const wakeWords = (cement: Cement): string | false => cement === "water-based cement" && "Just before, warm both coats with the hair dryer to 60 or 70 °C, until they are tacky again; or press them unwarmed while they are open, if the label says so.";

/** What wakes a coat, where it has to be woken. */
export const wakeTools = (cement: Cement): readonly ToolId[] => (cement === "water-based cement" ? ["hair dryer"] : []);
export const wakeHazards = (cement: Cement): readonly HazardId[] => (cement === "water-based cement" ? ["heat"] : []);
