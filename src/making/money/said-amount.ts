import { finding, type Finding } from "#base/findings.ts";
import type { MoneyField } from "#base/sentences/money.ts";
import type { GoodId, Measure } from "../goods.ts";
import type { Written } from "../said.ts";
import { readAmount } from "../amounts/units.ts";

/** An amount in the good's own measure, and as the maker wrote it. */
export interface SaidAmount {
  readonly amount: number;
  readonly words: string;
}

export interface AmountAsked {
  readonly field: Exclude<MoneyField, "price">;
  readonly good: GoodId;
  readonly measure: Measure;
  /** Nothing may lie on a shelf, but a price is not for nothing. */
  readonly mayBeNone?: boolean;
}

/** Reads an amount of a good; what is wrong with it is told at its field, and it is left out. */
export function saidAmount(written: Written, { field, good, measure, mayBeNone = false }: AmountAsked, findings: Finding[]): SaidAmount | undefined {
  const read = readAmount(written, measure);
  const got = String(written).trim();
  if ("wrong" in read) findings.push(finding("money-amount", { field, good, wrong: read.wrong }));
  else if (read.value === 0 && !mayBeNone) findings.push(finding("money-amount", { field, good, wrong: `"${got}" is nothing; write how much it is` }));
  else return { amount: read.value, words: got };
  return undefined;
}
