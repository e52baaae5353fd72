import type { Rule } from "#lines/lines.ts";
import { pieceRulesFor } from "#pieces/rules.ts";
import { shellRulesFor } from "#shell/rules.ts";
import type { LastPair } from "#job/pair.ts";

export type Rules = Readonly<Record<string, Rule>>;

/** All rules of pieces and shell as they stand for a pair's last and its topline's edge. */
export const rulesOf = ({ pieceRules, shellRules }: LastPair): Rules => ({ ...pieceRules, ...shellRules });

/** Those whose numbers are others on a shorter and a longer last, all else alike. */
export function growing({ last: { measures }, shellSettings }: LastPair): ReadonlySet<string> {
  const [short, long] = [0.92, 1.08].map((share) => {
    const scaled = { ...measures, stickLength: share * measures.stickLength, lastLength: share * measures.lastLength };
    return { ...pieceRulesFor({ measures: scaled }, shellSettings.edge), ...shellRulesFor({ measures: scaled }, shellSettings) } as Rules;
  });
  return new Set(Object.keys(short!).filter((key) => numbers(short![key]!) !== numbers(long![key]!)));
}
const numbers = ({ value, min, max }: Rule): string => [value, min, max].join(" ");

/** A table of rules just as the program holds them: name, usual value, range, reason, source. */
export function ruleTable(keys: readonly string[], rules: Rules, grow: ReadonlySet<string>): string {
  const rows = keys.map((key) => {
    const rule = rules[key];
    if (!rule) throw new Error(`There is no rule "${key}".`);
    const { name, value, min, max, why, source } = rule;
    const unit = rule.unit === "share" ? " %" : ` ${rule.unit}`;
    const said = (n: number): string => String(Math.round(1e4 * n * (rule.unit === "share" ? 100 : 1)) / 1e4);
    const range = min < max ? `${said(min)} to ${said(max)}` : "as it is";
    return `| ${capital(name)} | **${said(value)}${unit}** | ${range}${grow.has(key) ? ", by the last's length" : ""} | ${cell(why)} | ${cell(capital(source).replace(/\.$/, ""))} |`;
  });
  return ["| what | usual | range | why | from |", "| --- | --- | --- | --- | --- |", ...rows].join("\n");
}

const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);
const cell = (text: string): string => text.replaceAll("|", "\\|");
