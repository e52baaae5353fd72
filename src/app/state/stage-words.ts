import { capital } from "#base/listed.ts";
import type { Busy } from "../desktop.ts";

const words: Readonly<Record<string, string>> = {
  last: "Reading the last",
  forme: "Unrolling the last for drawing",
  bottom: "Laying the bottom flat",
  lines: "Drawing the lines",
  shell: "Lifting the shell off the last",
  flatten: "Laying the shell flat",
  beneath: "Laying lining, stiffener and puff beneath it",
  tension: "Drawing the topline together",
  halves: "Comparing the two halves",
  lining: "Laying the lining flat",
  panels: "Laying the parts of the upper flat",
  "heel part": "Cutting the heel part off the shell",
  heel: "Laying the heel flat",
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
  leather: "Reading the leathers",
  "lay for the leather": "Laying the pattern for these leathers",
  "pull over": "Pulling the upper over",
  drafts: "Drawing draft by draft",
  remedies: "Trying what would help",
  band: "Pulling like leathers over",
  turn: "Pulling it over with the pieces turned",
  correct: "Correcting the pattern for these leathers",
  compensate: "Pulling over and correcting again",
  wrap: "Laying the card back on the last",
  nicks: "Trying nicks in the feather edge",
  seams: "Trying other seams",
};

/** Stages of the pipeline that read a picture are called so, with its name. */
const ofPicture = "photo ";

/** What is being done, for the maker; a stage without words of its own is told as it calls itself. */
export function stageWords({ on, trial, stage }: Pick<Busy, "on" | "trial" | "stage">): string {
  if (stage in words) return words[stage]!;
  if (stage.startsWith(ofPicture)) return `Reading ${stage.slice(ofPicture.length)}`;
  if (stage !== "") return capital(stage);
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
  ["beneath", 2],
  ["tension", 4],
  ["lining", 2],
  ["panels", 4],
  ["heel part", 2],
  ["heel", 2],
  ["pieces", 8],
];
const whole = weights.reduce((sum, [, w]) => sum + w, 0);

/** How far the tracing of one picture is when each of its stages begins, and the share of it that the stage takes; from runs on 24 million pixels. */
const ofOnePicture: Readonly<Record<string, readonly [from: number, share: number]>> = { card: [0.4, 0.15], flat: [0.55, 0.08], outlines: [0.63, 0.37] };
/** All pictures together are so much of a work that has any. */
const allPictures = 0.92;

/** A stage begins, or is this far: how many pictures are behind then, and how far the whole work is, 0 … 1; never less than before, for a bar that goes back tells nothing. */
export function wholeShare(busy: Pick<Busy, "on" | "fraction" | "pictures">, stage: string, fraction: number): Pick<Busy, "fraction" | "pictures"> {
  const { on, fraction: before, pictures } = busy;
  if (on === "sheets" && stage === "sheets") return { fraction, pictures };
  const named = stage.startsWith(ofPicture) ? pictures.names.indexOf(stage.slice(ofPicture.length)) : -1;
  const behind = named < 0 ? pictures.behind : named + (fraction >= 1 ? 1 : 0);
  const further = (to: number): Pick<Busy, "fraction" | "pictures"> => ({ fraction: Math.max(before, to), pictures: behind === pictures.behind ? pictures : { ...pictures, behind } });
  const part = ofOnePicture[stage];
  if (pictures.names.length > 0 && (named >= 0 || part)) return further((allPictures * Math.min(pictures.names.length, behind + (part ? part[0] + part[1] * Math.min(1, fraction) : 0))) / pictures.names.length);
  const at = weights.findIndex(([name]) => name === stage);
  if (at < 0) return further(before);
  const done = weights.slice(0, at).reduce((sum, [, w]) => sum + w, 0);
  return further((done + Math.min(1, fraction) * weights[at]![1]) / whole);
}

/** From which share to which each part of trying a pattern out takes; before the first of them the pair itself is worked out. */
const proven: Readonly<Record<string, readonly [from: number, to: number]>> = { wrap: [0.1, 0.5], nicks: [0.5, 0.9], seams: [0.9, 1] };

/** How far the trying out of a pattern is, 0 … 1. */
export function provenShare(stage: string, fraction: number): number {
  const [from, to] = proven[stage] ?? [0, 0];
  return from + (to - from) * Math.min(1, fraction);
}
