import type { Finding } from "#base/findings.ts";
import type { Job } from "#job/job.ts";
import type { Pair } from "#job/pair.ts";
import type { Rules } from "#job/run-options.ts";
import type { TracedPicture } from "#tape/taped-shell.ts";
import type { Wish } from "./bench.ts";
import type { History } from "./state/history.ts";
import type { SeenLast } from "./state/seen-last.ts";
import type { Spot } from "./state/spot.ts";
import type { Standing } from "./state/standing.ts";
import type { Unused } from "./state/unused.ts";
import type { MadeSheets } from "./worker-talk.ts";

export type Saved = "saving" | "saved" | "elsewhere" | "not saved" | "refused";
export interface Busy {
  readonly on: Wish["for"];
  readonly trial: boolean;
  readonly stage: string;
  readonly fraction: number;
  /** The pictures that have to be traced for it, by name in the order of the work, and how many of them are behind. */
  readonly pictures: { readonly names: readonly string[]; readonly behind: number };
}
/** What stands wrong, in a sentence; `kind` says whether the maker's input or our own program is at fault. */
export interface Trouble {
  readonly kind: "refused" | "broke";
  readonly sentence: string;
  /** What the sentence was made from, where it is one of the catalogue. */
  readonly finding?: Finding;
  /** A saved job that was refused and can be opened all the same, to be corrected. */
  readonly toCorrect?: Job;
}
/** A number that was refused: what was typed stays in its field with the sentence, while the job keeps the last good one. */
export interface RefusedNumber {
  readonly spot: Spot;
  readonly sentence: string;
  /** Nothing when the job itself still holds the refused number, for want of a better one. */
  readonly text: string | undefined;
  /** It is kept beside the work until it goes with the other numbers. */
  readonly kept?: boolean;
}
export interface Desktop {
  readonly history: History;
  readonly pair: Pair | undefined;
  /** The rules for the last of this work; known also when no pair can be made of it, unless the last itself is refused. */
  readonly rules: Rules | undefined;
  readonly refused: RefusedNumber | undefined;
  /** Numbers that could not be used and stand in their fields until they are corrected or let go. */
  readonly standing: readonly Standing[];
  /** Measures of the present step that are not used yet. */
  readonly unused: Unused | undefined;
  /** The work itself is refused and there is no picture of it; its numbers are shown to be corrected. */
  readonly stuck: boolean;
  readonly busy: Busy | undefined;
  readonly trouble: Trouble | undefined;
  /** Photographs or a scan that make no pattern yet, as the present step has them; they wait until they are put right or let go. */
  readonly waiting: Job | undefined;
  /** What was traced in the photographs that wait, as far as it got. */
  readonly waitingTraced: { readonly job: Job; readonly pictures: readonly TracedPicture[] } | undefined;
  /** The last on a scan that waits. */
  readonly waitingLast: SeenLast | undefined;
  readonly saved: Saved;
  /** Kept work was looked for: what is shown is the maker's own, or there is none. */
  readonly looked: boolean;
  /** The work as it was when a scan or pictures were last brought into it. */
  readonly brought: Job | undefined;
  /** Files made from `sheetsOf`; they count only while that is still the pair. */
  readonly sheets: MadeSheets | undefined;
  readonly sheetsOf: Pair | undefined;
  /** The pair shown was worked out coarsely, while something moves. */
  readonly draft: boolean;
}

/** Parts of the desktop where nothing is complained of. */
export const noComplaint = { refused: undefined, trouble: undefined };

/** What was seen of something that waits no longer, or not in that state. */
export const noneWaits = { waitingLast: undefined, waitingTraced: undefined };

/** Before anything is known but what the work is. */
export const firstDesktop = (history: History): Desktop => ({
  ...noneWaits,
  ...noComplaint,
  history,
  pair: undefined,
  rules: undefined,
  unused: undefined,
  standing: [],
  stuck: false,
  busy: undefined,
  waiting: undefined,
  saved: "saving",
  looked: false,
  brought: undefined,
  sheets: undefined,
  sheetsOf: undefined,
  draft: false,
});
