import type { PullSettings } from "./settings.ts";

/** Which of the maker's pulls each draft is taken with, by its number. */
export const pullKeys: Readonly<Record<number, keyof PullSettings>> = {
  1: "pullToeN", 2: "pullToeCornerN", 3: "pullToeCornerN", 4: "pullBackN", 5: "pullSeatSideN", 6: "pullSeatSideN", 7: "pullJointN", 8: "pullJointN", 9: "pullWaistN", 10: "pullWaistN",
};
