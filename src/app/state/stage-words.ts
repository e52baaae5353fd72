import type { Busy } from "../desktop.ts";

const words: Readonly<Record<string, string>> = {
  last: "Reading the last",
  forme: "Unrolling the last for drawing",
  bottom: "Laying the bottom flat",
  lines: "Drawing the lines",
  shell: "Lifting the shell off the last",
  flatten: "Laying the shell flat",
  spring: "Swinging the heel ends together",
  pieces: "Cutting the pieces",
  sheets: "Making the sheets",
  clean: "Mending the scan",
  thin: "Thinning the scan",
  "clean: made anew": "Casting the scan anew as one skin",
  foot: "Looking whether it is a foot",
  card: "Finding the printed card in the picture",
  flat: "Laying the picture flat",
  outlines: "Tracing what lies in the card",
  remesh: "Laying an even net over the scan",
  pose: "Turning the last upright",
  "feather line": "Finding the feather line",
  frame: "Standing the last on its heel",
  measures: "Taping the last",
  "last from measurements": "Shaping the last",
  "laying one last on the other": "Laying one last on the other",
  comparing: "Comparing the two lasts",
};

/** What is being done, for the maker; a stage without words of its own is told as it calls itself. */
export function stageWords({ on, trial, stage }: Pick<Busy, "on" | "trial" | "stage">): string {
  if (stage in words) return words[stage]!;
  if (stage !== "") return stage.charAt(0).toUpperCase() + stage.slice(1);
  return on === "sheets" ? "Making the sheets" : trial ? "Reading the file" : "Working it out";
}

/** About how much of the whole work each stage is, in the order of the work; from runs on scans of 60 000 triangles. */
const weights: readonly (readonly [string, number])[] = [
  ["last", 3],
  ["thin", 4],
  ["clean", 22],
  ["clean: made anew", 10],
  ["remesh", 14],
  ["pose", 4],
  ["feather line", 12],
  ["frame", 3],
  ["measures", 5],
  ["laying one last on the other", 3],
  ["comparing", 3],
  ["forme", 6],
  ["bottom", 3],
  ["lines", 2],
  ["shell", 4],
  ["flatten", 4],
  ["spring", 2],
  ["pieces", 8],
];
const whole = weights.reduce((sum, [, w]) => sum + w, 0);

/** How far the whole work is, 0 … 1, when it is this far in a stage; never less than before, for a bar that goes back tells nothing. */
export function wholeShare({ on, fraction: before }: Pick<Busy, "on" | "fraction">, stage: string, fraction: number): number {
  if (on === "sheets" && stage === "sheets") return fraction;
  const at = weights.findIndex(([name]) => name === stage);
  if (at < 0) return before;
  const done = weights.slice(0, at).reduce((sum, [, w]) => sum + w, 0);
  return Math.max(before, (done + Math.min(1, fraction) * weights[at]![1]) / whole);
}
