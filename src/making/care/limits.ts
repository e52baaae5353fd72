// Limits for the air at work, each with who set it, when, and where that was read. None of them is a promise.
import type { Limit } from "./caution.ts";
import type { SolventId } from "./solvents.ts";

type Row = Omit<Limit, "substance" | "jurisdiction" | "date" | "atC" | "kind" | "source" | "fromMemory">;
type Origin = Pick<Limit, "jurisdiction" | "date" | "atC" | "kind" | "source" | "fromMemory">;

const french = "the same values stand in the French labour code, article R. 4412-149, as looked up in November 2026";
/** Directives count at 20 °C and 101.3 kPa (Directive 91/322/EEC, annex, note d). */
function union(date: string, source: string, fromMemory = false): Origin {
  return { jurisdiction: "European Union", date, atC: 20, kind: "indicative value in law", source, fromMemory };
}
const second = "Directive 2006/15/EC of 7 February 2006";
const first = "Directive 2000/39/EC of 8 June 2000";
const fourth = "Directive (EU) 2017/164 of 31 January 2017";
const looked = "as looked up in November 2026";
const usa = { atC: 25 } as const;
const osha = (source: string, fromMemory = false, date = `29 CFR 1910.1000, Table Z-1, ${looked}`): Origin => ({ ...usa, jurisdiction: "USA, OSHA", date, kind: "law", source, fromMemory });
const niosh = (source: string, fromMemory = false): Origin => ({ ...usa, jurisdiction: "USA, NIOSH", date: `recommended limit, ${looked}`, kind: "recommendation", source, fromMemory });
const california = (source: string): Origin => ({ ...usa, jurisdiction: "USA, California", date: `Title 8, section 5155, ${looked}`, kind: "law", source, fromMemory: false });
const acgih = (source: string): Origin => ({ ...usa, jurisdiction: "USA, ACGIH", date: `recommended limit, ${looked}`, kind: "recommendation", source, fromMemory: false });

const sheets = "safety data sheets that quote it";
const memory = "from memory; not opened";

function of(substance: SolventId, ...rows: readonly (readonly [Origin, Row])[]): Limit[] {
  return rows.map(([origin, row]) => ({ substance, ...origin, ...row }));
}

/** Eight hours, mean. By substance, the European Union first. */
export const limits: readonly Limit[] = [
  ...of(
    "toluene",
    [union(second, `${french}; some states of the Union have set less`), { ppm: 50, mgPerM3: 192, short: { ppm: 100, mgPerM3: 384 }, skin: true }],
    [osha("OSHA's page of limits for toluene, ppm; mg/m³ reckoned", false, `29 CFR 1910.1000, Table Z-2, ${looked}`), { ppm: 200, mgPerM3: 754, ceilingPpm: 300 }],
    [niosh("OSHA's page of limits for toluene"), { ppm: 100, mgPerM3: 375, short: { ppm: 150, mgPerM3: 560 } }],
    [california("OSHA's page of limits for toluene"), { ppm: 10, mgPerM3: 37, short: { ppm: 150 }, ceilingPpm: 500 }],
    [acgih(`${sheets}, ppm; mg/m³ reckoned`), { ppm: 20, mgPerM3: 75 }],
  ),
  ...of(
    "n-hexane",
    [union(second, `${french}; a safety data sheet that quotes the directive`), { ppm: 20, mgPerM3: 72 }],
    [osha("OSHA's page on n-hexane"), { ppm: 500, mgPerM3: 1800 }],
    [niosh("NIOSH's page on n-hexane"), { ppm: 50, mgPerM3: 180 }],
    [california("OSHA's page on n-hexane"), { ppm: 50, mgPerM3: 176 }],
    [acgih("OSHA's page on n-hexane"), { ppm: 50, mgPerM3: 176 }],
  ),
  ...of(
    "MEK",
    [union(first, `${french}; a safety data sheet that quotes it`), { ppm: 200, mgPerM3: 600, short: { ppm: 300, mgPerM3: 900 } }],
    [osha("OSHA's measuring method 16 for butanone"), { ppm: 200, mgPerM3: 590 }],
    [niosh(sheets), { ppm: 200, mgPerM3: 590, short: { ppm: 300, mgPerM3: 885 } }],
  ),
  ...of(
    "acetone",
    [union(first, french), { ppm: 500, mgPerM3: 1210 }],
    [osha(sheets), { ppm: 1000, mgPerM3: 2400 }],
    [niosh(sheets), { ppm: 250, mgPerM3: 590 }],
  ),
  ...of(
    "n-heptane",
    [union(first, memory, true), { ppm: 500, mgPerM3: 2085 }],
    [{ jurisdiction: "France", date: `labour code, article R. 4412-149, ${looked}`, atC: 20, kind: "law", source: "the article itself", fromMemory: false }, { ppm: 400, mgPerM3: 1668, short: { ppm: 500, mgPerM3: 2085 } }],
    [osha(sheets), { ppm: 500, mgPerM3: 2000 }],
    [niosh(sheets), { ppm: 85, mgPerM3: 350, ceilingPpm: 440 }],
  ),
  ...of(
    "cyclohexane",
    [union(second, french), { ppm: 200, mgPerM3: 700 }],
    [osha(memory, true, "29 CFR 1910.1000, Table Z-1, as remembered in November 2026"), { ppm: 300, mgPerM3: 1050 }],
    [{ ...niosh(memory, true), date: "recommended limit, as remembered in November 2026" }, { ppm: 300, mgPerM3: 1050 }],
  ),
  ...of(
    "ethyl acetate",
    [union(fourth, french), { ppm: 200, mgPerM3: 734, short: { ppm: 400, mgPerM3: 1468 } }],
    [osha(memory, true, "29 CFR 1910.1000, Table Z-1, as remembered in November 2026"), { ppm: 400, mgPerM3: 1400 }],
    [{ ...niosh(memory, true), date: "recommended limit, as remembered in November 2026" }, { ppm: 400, mgPerM3: 1400 }],
  ),
];

/** The limits of one solvent, the European Union's first. */
export function limitsOf(substance: SolventId): readonly Limit[] {
  return limits.filter((limit) => limit.substance === substance);
}

const mean = (minutes: string, { ppm, mgPerM3 }: { readonly ppm: number; readonly mgPerM3?: number }): string => `${ppm} ppm${mgPerM3 === undefined ? "" : ` (${mgPerM3} mg/m³)`} over ${minutes}`;

/** The figures of a limit: "50 ppm (192 mg/m³) over eight hours, 100 ppm (384 mg/m³) over fifteen minutes". */
export function limitFigures(limit: Limit): string {
  return [mean(limit.jurisdiction === "USA, NIOSH" ? "a shift of up to ten hours" : "eight hours", limit), ...(limit.short ? [mean("fifteen minutes", limit.short)] : []), ...(limit.ceilingPpm === undefined ? [] : [`never more than ${limit.ceilingPpm} ppm`])].join(", ");
}

/** Whose limit it is, and of when: "European Union, Directive 2006/15/EC of 7 February 2006". */
export function limitOrigin({ jurisdiction, date }: Limit): string {
  return `${jurisdiction}, ${date}`;
}

/** One limit in a sentence, with who set it, when, and where it was read. */
export function limitWords(limit: Limit): string {
  return `${limit.substance}: ${limitFigures(limit)}${limit.skin ? "; goes through the skin too" : ""} (${limitOrigin(limit)}; source: ${limit.source}).`;
}
