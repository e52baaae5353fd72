import type { Book, StepPictures } from "../book.ts";
import { backSection } from "./back-section.ts";
import { boardsPlan, fillerPlan, insoleTacks, marginPlan } from "./bottom-plan.ts";
import { draftsPicture, type DraftStep } from "./drafts.ts";
import { featherSection } from "./feather-section.ts";
import { heelSide, splitLift } from "./heel-side.ts";
import { capPlace, lapPlace, strapPlace } from "./places.ts";
import { pictureLines, type Picture, type PictureLines } from "./sketch-lines.ts";
import { stiffeningSkives, upperSkives } from "./skives.ts";
import { throatSnips } from "./throat.ts";
import { toplineSection } from "./topline-section.ts";

type Show = (book: Pick<Book, "input" | "gauges">, width: number) => readonly (Picture | undefined)[];

const drafts = (step: DraftStep): Show => ({ input, gauges }, width) => [input.from === "last" && gauges ? draftsPicture(step, input, gauges, width) : undefined];

/** Steps of which a picture tells more than words, by their ids; a pair without what is shown has none. */
const shows: Readonly<Record<string, Show>> = {
  "cut-stiffening": ({ input }, width) => [stiffeningSkives(input, width)],
  "skive-upper": ({ input }, width) => [upperSkives(input, width)],
  "sew-toe-cap": ({ input }, width) => [capPlace(input, width)],
  "sew-side-seams": ({ input }, width) => [lapPlace(input, width)],
  "fold-topline": ({ input }) => [throatSnips(input), toplineSection(input, "folded")],
  "bind-topline": ({ input }) => [toplineSection(input, "bound")],
  "bag-topline": ({ input }, width) => [strapPlace(input, width, "bag-topline")],
  "line-upper": ({ input }, width) => [strapPlace(input, width, "line-upper")],
  "stitch-topline": ({ input }) => [toplineSection(input, "stitched")],
  "prime-boards": ({ input }, width) => [boardsPlan(input, width)],
  "tack-insoles": ({ input }, width) => [insoleTacks(input, width)],
  "set-stiffeners": ({ input }) => [input.from === "last" ? backSection(input) : undefined],
  "draft-uppers": drafts("draft-uppers"),
  "last-sides": drafts("last-sides"),
  "last-toes": drafts("last-toes"),
  "rough-bottoms": ({ input }, width) => [marginPlan("rough-bottoms", input, width), featherSection(input, "margin")],
  "fit-fillers": ({ input }, width) => [fillerPlan(input, width)],
  "lay-soles": ({ input }) => [featherSection(input, "sole")],
  "prime-heels": ({ input }, width) => [splitLift(input, width)],
  "build-heels": ({ input }, width) => [heelSide(input, width)],
};

/** Steps that may have pictures. */
export const picturedSteps: readonly string[] = Object.keys(shows);

/** The drawings of a step as they are, so wide at the most, mm. */
export const picturesOf = (id: string, book: Pick<Book, "input" | "gauges">, width: number): readonly Picture[] => (shows[id]?.(book, width) ?? []).flatMap((picture) => (picture ? [picture] : []));

/** No wider on broad paper, mm. */
const mostWideMm = 52;

/** What is shown of the steps of a book; each is drawn once and remembered, for pages are laid out again and again. */
export function stepPictures(book: Pick<Book, "input" | "gauges">): StepPictures {
  const known = new Map<string, readonly PictureLines[]>();
  return ({ id }, besideWide, belowWide) => {
    const wide = Math.min(mostWideMm, besideWide), key = `${id} ${besideWide} ${belowWide}`;
    const made = known.get(key) ?? picturesOf(id, book, wide).map((picture) => pictureLines(picture, besideWide, belowWide));
    known.set(key, made);
    return made;
  };
}
