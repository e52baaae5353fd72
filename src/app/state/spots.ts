import { explain, type Finding } from "#base/findings.ts";
import type { Rules } from "#job/pipeline.ts";
import type { LastMeasurements } from "#last/measured.ts";
import type { LandmarkName, MeasureName } from "#last/said.ts";
import type { LineSettings } from "#lines/lines.ts";
import type { PieceSettings } from "#pieces/settings.ts";
import type { Station } from "./stations.ts";

export type MeasureKey = Exclude<keyof LastMeasurements, "side" | "toe">;
/** A number of the job, by the part it stands in: where a finding belongs, and which field a refusal speaks of. */
export type Spot = `last ${MeasureKey}` | `lines ${keyof LineSettings}` | `pieces ${keyof PieceSettings}` | "spring" | "card bar" | `scan ${MeasureName | "unit" | "side" | "feather" | "other"}` | `point ${LandmarkName}`;

const stationNames: Readonly<Record<string, Station>> = { last: "Last", lines: "Lines", pieces: "Pieces", spring: "Shell", card: "Last", scan: "Last", point: "Last" };
export const stationOf = (spot: Spot): Station => stationNames[spot.split(" ")[0]!]!;

/** Findings that speak of one number by their very kind. */
const byCode: Partial<Record<Finding["code"], Spot>> = {
  "throat-behind-vamp-point": "lines throatDepthMm",
  "throat-close-to-vamp-point": "lines throatDepthMm",
  "back-near-comb": "lines backHeightMm",
  "spring-too-wide": "spring",
  "flat-pattern-folds": "spring",
  "fold-needs-notches": "pieces toplineFoldMm",
  "fold-too-tight": "pieces toplineFoldMm",
  "lining-outside-upper": "pieces liningToeInMm",
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
  "edge-soft": "scan feather",
  "edge-drawn": "scan feather",
  "edge-none": "scan feather",
  "edge-hidden": "scan feather",
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
    case "topline-crosses-joint":
    case "topline-rises-to-hump":
      return f.data.half === "inner" ? "lines sideHeightMedialMm" : "lines sideHeightLateralMm";
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
      return `scan ${f.data.measure}` as Spot;
    case "landmark-off-line":
      return `point ${f.data.landmark}` as Spot;
    case "piece-setting-impossible":
    case "piece-setting-unusual":
      return pieceNamed(f.data.name, rules);
    default:
      return byCode[f.code];
  }
}

function lineNamed(name: string, rules: Rules | undefined): Spot | undefined {
  const line = rules?.line;
  const key = line && (Object.keys(line) as (keyof LineSettings)[]).find((k) => line[k].name === name);
  return key && `lines ${key}`;
}

function pieceNamed(name: string, rules: Rules | undefined): Spot | undefined {
  const key = rules && (Object.keys(rules.piece) as (keyof PieceSettings)[]).find((k) => rules.piece[k].name === name);
  return key && `pieces ${key}`;
}

/** The sentence of a finding as it stands on the page: without the reason, which "why" opens beside the field. */
export function tell(f: Finding): string {
  return f.code === "line-out-of-range" ? explain({ ...f, data: { ...f.data, whyItMatters: "" } }).trim() : explain(f);
}
