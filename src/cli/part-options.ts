// What is said on the command line about parts and sheets.
import { existsSync } from "node:fs";
import type { Command } from "commander";
import { finding } from "#base/findings.ts";
import { Refusal } from "#base/refusal.ts";
import type { Job } from "#job/job.ts";
import { backTops, extras, liningCuts, seamKinds, sockKinds, upperCuts, type PartChoices } from "#pieces/choices.ts";
import { mostBarOff, rollWidths, sheetSets, trueBarMm, type SheetChoices } from "#sheets/choices.ts";
import { paperNames } from "#sheets/paper.ts";
import { layers, type Layer } from "#sheets/pen.ts";
import { halvesChoices, leathers, toplineEdges, type ShellSettings } from "#shell/settings.ts";
import { millimetres, oneOf } from "./values.ts";

type Extra = (typeof extras)[number];

/** Every option is one of the job's own words; what is not said stays as the job has it. */
export interface PartOptions extends Partial<Pick<PartChoices, "cut" | "seam" | "lining" | "sock">>, Partial<Pick<ShellSettings, "leather" | "edge" | "halves">> {
  readonly backSeam?: PartChoices["backSeam"];
  readonly backTop?: PartChoices["backTop"];
  readonly with?: readonly Extra[];
  readonly without?: readonly Extra[];
  readonly paper?: SheetChoices["paper"];
  readonly roll?: number;
  readonly sets?: SheetChoices["sets"];
  readonly ownPages?: true;
  readonly barAcross?: number;
  readonly barUp?: number;
  readonly layers?: readonly Layer[];
}

export function addPartOptions(command: Command): Command {
  return command
    .option("--cut <cut>", `how the upper is opened: ${upperCuts.join(", ")}`, oneOf("--cut", upperCuts))
    .option("--seam <kind>", `side or inner seams: ${seamKinds.join(", ")}`, oneOf("--seam", seamKinds))
    .option("--back-seam <kind>", "back seam: closed, butted", oneOf("--back-seam", ["closed", "butted"]))
    .option("--back-top <kind>", `top of the back seam: ${backTops.join(", ")}`, oneOf("--back-top", backTops))
    .option("--edge <edge>", `topline: ${toplineEdges.join(", ")}`, oneOf("--edge", toplineEdges))
    .option("--leather <leather>", `upper leather: ${leathers.join(", ")}`, oneOf("--leather", leathers))
    .option("--halves <choice>", `inner and outer half: ${halvesChoices.join(", ")}`, oneOf("--halves", halvesChoices))
    .option("--lining <cut>", `lining in ${liningCuts.join(", ")}`, oneOf("--lining", liningCuts))
    .option("--sock <kind>", `sock: ${sockKinds.join(", ")}`, oneOf("--sock", sockKinds))
    .option("--with <parts>", `added parts, with commas between: ${extras.map(spoken).join(", ")}`, listOf("--with", extras))
    .option("--without <parts>", "parts left out that the job has", listOf("--without", extras))
    .option("--paper <paper>", paperNames.join(", "), oneOf("--paper", paperNames))
    .option("--roll <mm>", "width of the paper on a roll", millimetres("--roll", rollWidths.least, rollWidths.most))
    .option("--sets <sets>", `${sheetSets.join(", ")}: net cards, cutting patterns or both`, oneOf("--sets", sheetSets))
    .option("--own-pages", "every piece begins on a page of its own")
    .option("--bar-across <mm>", "what your rule reads on the printed bar across: the print is put right by it", bar("--bar-across"))
    .option("--bar-up <mm>", "the same for the bar up the page", bar("--bar-up"))
    .option("--layers <layers>", `what SVG and DXF hold, with commas between: ${layers.join(", ")}`, listOf("--layers", layers));
}

/** The job with what was said about parts and sheets put over it. */
export function withPartOptions(job: Job, options: PartOptions): Job {
  const { cut, seam, backSeam, backTop, lining, sock, leather, edge, halves, paper, roll, sets, ownPages, barAcross, barUp } = options;
  const yes = (list: readonly Extra[] | undefined, value: boolean) => Object.fromEntries((list ?? []).map((part) => [part, value]));
  return {
    ...job,
    parts: { ...job.parts, ...saidOnly({ cut, seam, backSeam, backTop, lining, sock }), ...yes(options.with, true), ...yes(options.without, false) },
    shell: { ...job.shell, ...saidOnly({ leather, edge, halves }) },
    sheets: { ...job.sheets, ...saidOnly({ paper: paper ?? (roll === undefined ? undefined : "roll"), rollWidthMm: roll, sets, onePage: ownPages, barAcrossMm: barAcross, barUpMm: barUp, layers: options.layers }) },
  };
}

const listWords = (): ReadonlySet<string> => new Set([...extras.map(spoken), ...layers]);

/** Throws a Refusal for a word of a list that a space has parted from it, so that it stands where a file should. */
export function refuseParted(paths: readonly string[]): void {
  const parted = paths.find((path) => listWords().has(path.toLowerCase().replace(/,$/, "")) && !existsSync(path));
  if (parted !== undefined) throw new Refusal(finding("option-list-parted", { word: parted.replace(/,$/, "") }));
}

/** What was said at all. */
const saidOnly = <T extends object>(said: T): { [K in keyof T]?: NonNullable<T[K]> } => Object.fromEntries(Object.entries(said).filter(([, value]) => value !== undefined)) as { [K in keyof T]?: NonNullable<T[K]> };

/** A part as it is written on the command line: back-strip for backStrip. */
const spoken = (part: string): string => part.replace(/[A-Z]/g, (letter) => `-${letter.toLowerCase()}`);

/** A parser for what was read on a printed bar of 100 mm, or of 200 mm on wide paper: the job holds it for one of 100 mm. */
const bar =
  (option: string) =>
  (text: string): number => {
    const longer = parseFloat(text) > 1.5 * trueBarMm ? 2 : 1;
    return millimetres(option, longer * mostBarOff.least, longer * mostBarOff.most)(text) / longer;
  };

/** A parser for several words of a list, with commas between. */
const listOf =
  <T extends string>(option: string, all: readonly T[]) =>
  (text: string): readonly T[] => {
    const words = text.split(",").map((word) => word.trim()).filter((word) => word !== "");
    return (words.length > 0 ? words : [text]).map((word) => {
      const found = all.find((one) => spoken(one) === word.toLowerCase() || one === word);
      if (found === undefined) throw new Refusal(finding("option-not-choice", { option, got: word, choices: all.map(spoken).join(", ") }));
      return found;
    });
  };
