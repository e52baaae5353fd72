import type { Rules } from "#job/run-options.ts";
import { usualParts, type PartChoices } from "#pieces/choices.ts";
import type { PieceSettings } from "#pieces/settings.ts";
import { fieldOf } from "./measure-field.ts";
import { say } from "./numbers.ts";
import { addedWords, cutWords, liningWords, seamWords, sockWords, topWords } from "./piece-choices.ts";
import { sheetWords } from "./sheet-words.ts";
import { edgeWords, leatherWords } from "./shell-words.ts";
import type { Usual } from "./usual.ts";

/** What the maker keeps, each by its name: "fold at the topline 5 mm, the sock covers the heel alone, A3". */
export function usualWords({ shell, pieces, parts, sheets }: Usual, rules: Rules): string {
  const numbers = (Object.keys(pieces) as (keyof PieceSettings)[]).flatMap((key) => {
    const rule = rules.piece[key];
    return rule ? [`${small(rule.name)} ${withUnit(pieces[key]!, rule)}`] : [];
  });
  const ofShell = Object.entries(shell).flatMap(([key, value]) => {
    if (typeof value === "string") return key === "edge" ? [`topline ${edgeWords[shell.edge!]}`] : key === "leather" ? [leatherWords[shell.leather!]] : [`halves: ${value}`];
    const rule = rules.shell?.[key as keyof typeof rules.shell];
    return rule ? [`${small(rule.name)} ${withUnit(value, rule)}`] : [];
  });
  const all = [...chosenWords(parts), ...ofShell, ...numbers, ...sheetWords(sheets)];
  return all.length === 0 ? "everything as the rules say" : all.join(", ");
}

const small = (name: string): string => name.charAt(0).toLowerCase() + name.slice(1);

function withUnit(value: number, rule: Parameters<typeof fieldOf>[0]): string {
  const { factor, unit, decimals } = fieldOf(rule);
  return `${say(value * factor, Math.max(1, decimals))}\u00a0${unit}`;
}

function chosenWords(parts: Partial<PartChoices>): readonly string[] {
  const { cut, seam, backSeam, backTop, lining, sock, ...added } = parts;
  const words = [
    cut && `cut ${cutWords[cut]}`,
    seam && `seams ${seamWords[seam]}`,
    backSeam && `back seam ${seamWords[backSeam]}`,
    backTop && `its top ${topWords[backTop]}`,
    lining && `lining as ${liningWords[lining]}`,
    sock && `sock over ${sockWords[sock]}`,
  ].filter((w) => w !== undefined);
  const with_ = (Object.keys(added) as (keyof typeof added)[]).filter((key) => added[key] !== undefined && added[key] !== usualParts[key]).map((key) => `with ${addedWords[key].words}`);
  return [...words, ...with_];
}
