import { explain, type Finding } from "#base/findings.ts";
import type { Rules } from "#job/run-options.ts";
import type { LineSettings } from "#lines/lines.ts";
import type { PieceSettings } from "#pieces/settings.ts";
import type { ShellNumbers } from "#shell/settings.ts";
import type { TapeMark } from "#tape/said.ts";
import { markWords } from "#tape/mark-words.ts";
import { makingSpotOf } from "./making-spots.ts";
import { choiceOf, pieceSpotOf } from "./piece-spots.ts";
import type { Spot } from "./spot.ts";
import type { Station } from "./stations.ts";
import { markNames } from "./tape-words.ts";

const stationNames: Readonly<Record<string, Station>> = { last: "Last", lines: "Lines", pieces: "Pieces", parts: "Pieces", shell: "Shell", leather: "Leather", strip: "Leather", lasting: "Lasting", shoe: "Lasting", making: "Making", sheets: "Sheets", card: "Last", scan: "Last", point: "Last", mark: "Last" };
export const stationOf = (spot: Spot): Station => stationNames[spot.split(" ")[0]!]!;

/** Findings that speak of one number by their very kind. */
const byCode: Partial<Record<Finding["code"], Spot>> = {
  "throat-behind-vamp-point": "lines throatDepthMm",
  "throat-close-to-vamp-point": "lines throatDepthMm",
  "back-near-comb": "lines backHeightMm",
  "spring-too-wide": "shell springMm",
  "flat-pattern-folds": "shell springMm",
  "flat-kept-apart": "shell springMm",
  "photo-bar-off": "card bar",
  "photo-bar-not-measured": "card bar",
  "photo-printed-off": "card bar",
  "outline-length": "last stickLengthMm",
  "outline-spring": "last toeSpringMm",
  "unit-read": "scan unit",
  "unit-doubtful": "scan unit",
  "last-unusual-length": "scan unit",
  "side-doubtful": "scan side",
  "side-against-shape": "scan side",
  "scale-set": "scan stickLength",
  "scale-leaves": "scan stickLength",
  "scale-far": "scan stickLength",
  "scale-contradicts": "scan stickLength",
  "comb-missing": "scan heelHeight",
  "pitch-doubtful": "scan heelHeight",
  "vamp-point-too-high": "point vampPoint",
  "landmarks-out-of-order": "point vampPoint",
  "pull-far-off": "scan feather",
  "pulls-zigzag": "scan feather",
  "edge-soft": "scan feather",
  "edge-drawn": "scan feather",
  "edge-none": "scan feather",
  "edge-hidden": "scan feather",
  "second-last-refused": "scan other",
  "pair-true": "scan other",
  "pair-none": "scan other",
  "pair-same-side": "scan other",
  "pair-side-doubtful": "scan other",
  "pair-side-wrong": "scan other",
  "pair-differs-at": "scan other",
};

/** The number that a finding speaks of, if it is one. */
export function spotOf(f: Finding, rules: Rules | undefined): Spot | undefined {
  switch (f.code) {
    case "line-out-of-range":
    case "line-beyond-last":
    case "line-too-small":
    case "line-not-a-number":
      // The back is what lifts a half of the topline off the last.
      return lineNamed(f.data.what, rules) ?? (f.data.what.endsWith("half of the topline") ? "lines backHeightMm" : undefined);
    case "seam-through-joint":
      return f.data.what === "side seams" ? "pieces sideSeamBehindThroatMm" : "pieces innerSeamBeforeBreastMm";
    case "topline-crosses-joint":
    case "topline-rises-to-hump":
      return f.data.half === "inner" ? "lines sideHeightMedialMm" : "lines sideHeightLateralMm";
    case "lowest-elsewhere":
      return f.data.half === "inner" ? "lines lowestAtMedial" : "lines lowestAtLateral";
    case "measure-not-a-length":
    case "measure-out-of-range":
    case "measures-contradict":
    case "measures-do-not-match":
    case "measure-against-size":
    case "measures-impossible":
    case "measure-not-met":
    case "girth-against-outlines":
    case "outline-width":
    case "outline-narrower":
      return `last ${f.data.measure.replace(/Mm$/, "")}Mm` as Spot;
    case "own-measure-differs":
    case "measure-slip":
      return `scan ${f.data.measure}` as Spot;
    case "landmark-off-line":
    case "landmark-far-from-found":
    case "landmark-on-other-side":
      return `point ${f.data.landmark}` as Spot;
    case "tape-mark-off":
    case "tape-marks-contradict": {
      const [first] = marksOf(f);
      return first && `mark ${first}`;
    }
    case "piece-setting-impossible":
    case "piece-setting-unusual":
      return pieceNamed(f.data.name, rules);
    case "shell-setting-impossible":
    case "shell-setting-unusual":
      return shellNamed(f.data.name, rules);
    default:
      return makingSpotOf(f) ?? pieceSpotOf(f) ?? byCode[f.code] ?? choiceOf(f);
  }
}

/** Everywhere that a finding is told: at its number, and at the word that brought it about. */
export const spotsOf = (f: Finding, rules: Rules | undefined): readonly Spot[] => [spotOf(f, rules), choiceOf(f)].filter((spot) => spot !== undefined);

/** Every mark of a taped pattern that a finding speaks of. */
export function marksOf(f: Finding): readonly TapeMark[] {
  const named = f.code === "tape-mark-off" ? [f.data.mark] : f.code === "tape-marks-contradict" ? f.data.marks : [];
  const all = Object.keys(markNames) as TapeMark[];
  return named.flatMap((words) => all.filter((mark) => markWords(mark) === words));
}

/** Whether the spot is a number in a field of its own, beside which its refusal can be told. */
export const isField = (spot: Spot): boolean => !/^(point|mark|parts) |^scan (unit|side|feather|other)$/.test(spot);

function lineNamed(name: string, rules: Rules | undefined): Spot | undefined {
  const line = rules?.line;
  const key = line && (Object.keys(line) as (keyof LineSettings)[]).find((k) => line[k].name === name);
  return key && `lines ${key}`;
}

function pieceNamed(name: string, rules: Rules | undefined): Spot | undefined {
  const key = rules && (Object.keys(rules.piece) as (keyof PieceSettings)[]).find((k) => rules.piece[k].name === name);
  return key && `pieces ${key}`;
}

function shellNamed(name: string, rules: Rules | undefined): Spot | undefined {
  const shell = rules?.shell;
  const key = shell && (Object.keys(shell) as (keyof ShellNumbers)[]).find((k) => shell[k].name === name);
  return key && `shell ${key}`;
}

/** The sentence of a finding as it stands on the page: without the reason, which "why" opens beside the field. */
export function tell(f: Finding): string {
  return f.code === "line-out-of-range" ? explain({ ...f, data: { ...f.data, whyItMatters: "" } }).trim() : explain(f);
}
