import { sentence } from "../sentence.ts";

const percent = (value: number): string => `${value.toFixed(0)} %`;

const drafts = (of: readonly { number: number; name: string; byMm: number }[]): string => of.map(({ number, name, byMm }) => `${byMm.toFixed(1)} mm wider at draft ${number}, ${name}`).join("; ");

export const correctSentences = {
  "corrected-margin": sentence("note", (d: { drafts: readonly { number: number; name: string; byMm: number }[] }) => `The correction for the leather takes from the lasting margin: at its marks less shows than is added. To have as much to pull by as on the plain pattern, cut the lasting margin ${drafts(d.drafts)}.`),
  "corrected-unsettled": sentence("look", (d: { moveMm: number }) => `The pattern for this leather did not come to rest: it may still be ${d.moveMm.toFixed(1)} mm off. Take lighter pulls, or cut from the pattern without correction.`),
  "corrected-grain": sentence("look", (d: { percent: number; limitPercent: number }) => `Pulled like this the upper is stretched by ${percent(d.percent)} here, and its grain may crack above ${percent(d.limitPercent)}. Pull lighter, or turn the leather.`),
  "corrected-tears": sentence("look", (d: { percent: number; limitPercent: number }) => `Pulled like this the upper would be stretched by ${percent(d.percent)} here; it tears at ${percent(d.limitPercent)}. Pull lighter, or take a firmer leather.`),
};
