import type { Rule } from "#lines/lines.ts";
import type { ToplineShift } from "./shift.ts";

/** How the upper is pulled over the last: pulls in N of lasting pincers whose jaws are {@link jawsMm} broad. And what is taken up in a corrected pattern. */
export interface PullSettings extends ToplineShift {
  readonly pullToeN: number;
  readonly pullToeCornerN: number;
  readonly pullBackN: number;
  readonly pullSeatSideN: number;
  readonly pullJointN: number;
  readonly pullWaistN: number;
  /** Friction of the lining on the last, as a share of the pressure. */
  readonly friction: number;
  /** Force with which the tape in the topline resists being stretched by its own length, N; 0 for none. */
  readonly tapeN: number;
  /** Turn of the upper's and the lining's direction of least stretch from lengthwise (back to toe), degrees counter-clockwise as seen on the piece of a right shoe. */
  readonly upperTurnDeg: number;
  readonly liningTurnDeg: number;
}

/** What the maker chooses about lasting: the numbers, and whether the pieces are cut from the corrected pattern. */
export interface LastingChoices extends PullSettings {
  readonly correct: boolean;
  /** Whether back, seat sides and waists are pulled only until the topline stands at its mark; else all drafts with their full pull. */
  readonly stopAtMarks: boolean;
}

/** Width of the pincers' jaws, mm (common practice, no source). */
export const jawsMm = 20;

export type PullRules = { readonly [K in keyof PullSettings]: Rule };

const practice = "Common practice, no source.";
const pull = (name: string, value: number, why: string, source: string): Rule => ({ value, min: 2, max: 200, step: 1, unit: "N", name, why, source: `No figure was found for pulls with lasting pincers. ${source}` });
const byForce = "By trial on five lasts in goat, calf and nappa: with it the throat moves forward by 3 to 6 mm, lengthwise stretch comes to 3 to 8 %, and it ends from right at its mark in goat, taped, to 10 mm deeper in nappa without a tape.";
const atMost = "A firm pull by hand, 20 to 30 N on 20 mm: from memory.";

const shift = (name: string, why: string): Rule => ({ value: 0, min: -8, max: 8, step: 0.1, unit: "mm", name, why, source: "Worked out by pulling the pattern over, or from shoes that were measured." });

/** The rules for pulling over; they do not depend on the last. */
export const pullRules: PullRules = {
  pullToeN: pull("pull over the toe", 100, "The first draft draws the upper from back to toe. It decides how deep the throat opens.", byForce),
  pullToeCornerN: pull("pull at the toe's corners", 50, "Lengthwise, then across, alike on both sides, so that the throat stays on the centre.", byForce),
  pullBackN: pull("pull at the back, at most", 25, "It sets the back height: pull until the back stands at its mark, no harder than this. Too much and the quarters stand low, too little and the back cuts in.", atMost),
  pullSeatSideN: pull("pull at the seat's sides, at most", 25, "Where the bulge of the heel drops into the waist: each side until the topline above it stands at its mark, no harder than this.", atMost),
  pullJointN: pull("pull at the joints", 20, "Across the forepart, where the leather gives most. No topline stands above it, so it is pulled by feel.", atMost),
  pullWaistN: pull("pull at the waist, at most", 25, "Just past tight, and on only until the topline above it stands at its mark.", atMost),
  friction: { value: 0.2, min: 0, max: 0.8, step: 0.05, unit: "share", name: "friction on the last", why: "With French chalk on the last or a film between it is 0.15 to 0.25; dry leather on wood drags at 0.3 to 0.4. It decides how much of a pull at the toe reaches the throat.", source: "The last is dusted with French chalk before it is lasted (a shoemaking textbook); with chalk 0.15 to 0.25: from memory. Dry leather on wood 0.3 to 0.4: an engineering table. No figure was found for plastic lasts." },
  tapeN: { value: 600, min: 0, max: 5000, step: 50, unit: "N", name: "strength of the topline tape", why: "How firmly the tape in the fold keeps the topline from stretching: the force that would double its length if it went on as it begins. 600 N is 6 N for each percent.", source: "From memory, for a woven tape 4 mm broad." },
  upperTurnDeg: { value: 0, min: -90, max: 90, step: 5, unit: "deg", name: "direction of the upper", why: "Least stretch lengthwise keeps the topline tight; the stretch across is pulled round the forepart.", source: practice },
  throatShiftMm: shift("throat cut farther from the toe", "What is left over when the corrected pattern is pulled over draft by draft: the throat is cut so much farther out that it ends where it was drawn."),
  backShiftMm: shift("back cut higher", "The same at the back seam: what draft 4 draws away is left on."),
  innerShiftMm: shift("inner side cut higher", "The same at the lowest place of the inner side."),
  outerShiftMm: shift("outer side cut higher", "The same at the lowest place of the outer side."),
  liningTurnDeg: { value: 0, min: -90, max: 90, step: 5, unit: "deg", name: "direction of the lining", why: "Least stretch lengthwise at the topline.", source: practice },
};

/** The usual choices with the maker's own put in place of them. */
export function lastingFrom(own: Partial<LastingChoices> = {}): LastingChoices {
  const numbers = Object.fromEntries(Object.entries(pullRules).map(([key, rule]) => [key, own[key as keyof PullRules] ?? rule.value]));
  return { ...(numbers as unknown as PullSettings), correct: own.correct ?? false, stopAtMarks: own.stopAtMarks ?? true };
}
