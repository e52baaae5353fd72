import type { Half } from "#lines/feather.ts";
import { heightAt, lowestHeight, type FlatHeight } from "#tape/judge.ts";
import { meanLength, type TapedHalf, type TapedShell } from "#tape/taped-shell.ts";
import { acceptedAt, quarterWords, sideWords, type TapeMark, type TapeMarks } from "./tape-marks.ts";

/** A height as it is measured on the flat card, and how it is called. */
export interface CardHeight {
  readonly key: string;
  readonly tick: string;
  readonly height: FlatHeight;
}

/** Quarters of the topline from the back point, and its lowest place, in the order in which they follow from the heel. */
export function cardHeights(half: TapedHalf): readonly CardHeight[] {
  const quarters = [0.25, 0.5, 0.75].map((share, i): CardHeight => ({ key: `quarter-${i + 1}`, tick: quarterWords[i]!, height: heightAt(half, share * half.lengths.topline) }));
  return [...quarters, { key: "lowest", tick: "low", height: lowestHeight(half) }].sort((a, b) => a.height.along - b.height.along);
}

/** The lengths that can be told from a taped pattern, as they lie on the flat card; the same kind of list as from a last. */
export function cardMarks({ medial, lateral }: TapedShell): TapeMarks {
  const halves: Readonly<Record<Half, TapedHalf>> = { medial, lateral };
  const heights = (half: Half): readonly TapeMark[] =>
    cardHeights(halves[half]).map(({ key, tick, height }) => ({ key: `${half}-${key}`, tick, words: `${sideWords[half]}, ${tick === "low" ? "height, lowest place" : `height at ${tick}`}`, lengthMm: height.heightMm, accepted: acceptedAt.side }));
  const along = (half: Half): readonly TapeMark[] => {
    const at = (key: string, tick: string, lengthMm: number): TapeMark => ({ key: `${half}-along-${key}`, tick, words: `${sideWords[half]}, ${tick} point`, lengthMm });
    return [...cardHeights(halves[half]).map(({ key, tick, height }) => at(key, tick, height.alongFeatherMm)), at("joint", "joint", halves[half].lengths.seatToJoint)];
  };
  return {
    throat: { key: "throat", tick: "throat", words: "Throat depth, toe to throat", lengthMm: meanLength(halves, "centre"), accepted: acceptedAt.throat },
    back: { key: "back", tick: "back", words: "Back height, seat to back point", lengthMm: meanLength(halves, "back"), accepted: acceptedAt.back },
    heights: { medial: heights("medial"), lateral: heights("lateral") },
    along: { medial: along("medial"), lateral: along("lateral") },
  };
}
