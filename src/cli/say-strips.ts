// What strips tell of a leather, in sentences and as an object.
import { explain, severityOf, type Finding } from "#base/findings.ts";
import { stripWays, type LeatherSaid, type StripWay } from "#leather/leather.ts";
import type { StripFit } from "#leather/strip-fit.ts";
import { knownWords, likenessWords, wayWords } from "#leather/strip-words.ts";
import { stretchAt } from "#leather/uniaxial.ts";
import { sayFindings } from "./say.ts";

const percent = (share: number): string => `${(100 * share).toFixed(1)} %`;

export function sayStrips(said: LeatherSaid, fit: StripFit, findings: readonly Finding[], file: string): string {
  const { leather, readings, restMm } = fit;
  const thickness = said.thicknessMm === undefined ? `taken as ${leather.thicknessMm} mm thick` : `${leather.thicknessMm} mm thick`;
  const count = readings.length === 1 ? "1 reading" : `${readings.length} readings`;
  const lie = readings.length === 1 ? "which lies" : "most of which lie";
  const head = readings.length === 0 ? `${file}: no reading that can be used. These are the usual figures of ${knownWords[leather.known]}.` : `${said.name ?? file}, ${thickness}: ${count}, ${lie} within ${Math.max(0.1, readings.length === 1 ? restMm : 2 * restMm).toFixed(1)} mm of what is told here.`;
  return [[head, ...stretches(fit), ...(readings.length === 0 ? [] : [likenessWords(leather.known, fit.likeness)]), ...setWords(leather.set)].join("\n"), inNumbers(fit), sayFindings(findings), "Nothing here replaces your judgement: pull a trial in scrap."].filter(Boolean).join("\n\n");
}

function stretches({ told, leather: { numbers } }: StripFit): string[] {
  const row = (way: StripWay): string => {
    const { stretch, low, high } = told[way];
    return `  ${wayWords[way].padEnd(14)} ${percent(stretch).padStart(7)}   ${`${percent(low)} to ${percent(high)}`.padEnd(18)} ${percent(stretchAt(numbers, way, 1.25) - 1).padStart(8)}`;
  };
  return [`  ${"".padEnd(14)} ${"10 N".padStart(7)}   ${"nine times of ten".padEnd(18)} ${"25 N".padStart(8)}`, ...stripWays.map(row), "Stretch of a strip 20 mm wide; 25 N is a firm pull by hand."];
}

function setWords(share: number | undefined): string[] {
  return share === undefined ? [] : [`A minute after the load is off, ${Math.round(100 * share)} % of the stretch is still there.`];
}

/** Load in N that one percent of stretch takes on a strip 20 mm wide, of a stiffness in N per mm of width. */
const forOnePercent = (stiffness: number): string => (0.01 * 20 * stiffness).toFixed(1);

function inNumbers({ leather: { numbers, spread } }: StripFit): string {
  const { along, across, bias, toe, early, poisson } = numbers;
  return [
    `Past its soft beginning, one percent more takes about ${forOnePercent(along)} N along, ${forOnePercent(across)} N across and ${forOnePercent(bias)} N at 45 degrees.`,
    `The soft beginning ends at about ${percent(toe)} along; at its very start one percent takes ${Math.round(100 * early)} % of these loads.`,
    `A strip along that gets 10 % longer is taken to get ${(10 * poisson).toFixed(1)} % narrower; that is usual, and not read.`,
    `Another piece of this skin may give ${Math.round(100 * spread.common)} % more or less in all ways together.`,
  ].join("\n");
}

/** The object of `--json`. Shares: 0.1 is 10 %; pulls in N per mm of width. */
export function stripReport(said: LeatherSaid, { leather, told, likeness, readings, restMm, curves }: StripFit, findings: readonly Finding[]): object {
  return {
    leather,
    stretchAt10NOn20Mm: told,
    likeness,
    restMm,
    readings,
    curves: curves.map(({ way, pull, stretch, low, high }) => ({ way, pull: [...pull], stretch: [...stretch], low: [...low], high: [...high] })),
    // As it stands in a saved job under `leather`, for `upper` or `lining`.
    said,
    findings: findings.map((f) => ({ code: f.code, severity: severityOf(f), text: explain(f) })),
  };
}
