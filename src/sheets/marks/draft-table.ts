import type { Gauges } from "#lasting/gauges.ts";
import type { PageInk } from "../pdf/page-ink.ts";
import { draftWord } from "./paper-strip.ts";
import { half } from "./strips.ts";
import { inkTable, type Column } from "./table.ts";

const rowMm = 4.6;
export const draftTableHigh = ({ drafts }: Gauges): number => rowMm * (drafts.length + 1);

/** The drafts of one shoe with the margins that must show, what was foretold, and room for what shows. Returns where it ends. */
export function inkDraftTable(ink: PageInk, { drafts, side }: Gauges, x: number, top: number, width: number): number {
  const told = drafts.some((d) => d.foretold);
  const columns: readonly Column[] = [
    { head: "Draft", mm: width - (told ? 88 : 66) },
    { head: "from seat", mm: 16 },
    { head: "upper", mm: 12, bold: true },
    { head: "lining", mm: 12, bold: true },
    ...(told ? [{ head: "foretold", mm: 22 }] : []),
    { head: `shows, ${side}`, mm: 26 },
  ];
  const rows = drafts.map((d) => [
    `${draftWord(d.number)}  ${d.name}`,
    d.half === undefined ? "" : half(d.alongMm),
    half(d.upperMm),
    half(d.liningMm),
    ...(told ? [d.foretold ? `${half(d.foretold.marginMm)} ${d.foretold.word}` : ""] : []),
    "",
  ]);
  return inkTable(ink, columns, rows, { x, top, rowMm });
}
