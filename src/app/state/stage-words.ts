import type { Busy } from "../desk.ts";

const words: Readonly<Record<string, string>> = {
  last: "Working out the last",
  forme: "Unrolling the last for drawing",
  bottom: "Laying the bottom flat",
  lines: "Drawing the lines",
  shell: "Lifting the shell off the last",
  flatten: "Laying the shell flat",
  spring: "Swinging the heel ends together",
  pieces: "Cutting the pieces",
  sheets: "Making the sheets",
  clean: "Mending the scan",
  remesh: "Laying an even net over the scan",
  pose: "Turning the last upright",
  "feather line": "Finding the feather line",
  frame: "Standing the last on its heel",
  measures: "Taping the last",
  "last from measurements": "Shaping the last",
};

/** What is being done, for the maker; a stage without words of its own is told as it calls itself. */
export function stageWords({ on, trial, stage }: Pick<Busy, "on" | "trial" | "stage">): string {
  if (stage in words) return words[stage]!;
  if (stage !== "") return stage.charAt(0).toUpperCase() + stage.slice(1);
  return on === "sheets" ? "Making the sheets" : trial ? "Reading the file" : "Working it out";
}
