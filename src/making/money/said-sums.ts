import { finding, type Finding } from "#base/findings.ts";
import { sameCurrency } from "./currencies.ts";
import { readMoney } from "./read-money.ts";
import type { MakingSaid } from "../said.ts";

/** The sums of money that are not prices of goods. */
export interface SaidSums {
  /** For an hour's work. */
  readonly rate?: number;
  /** For one pair. */
  readonly overhead?: number;
  /** For a pair. */
  readonly asked?: number;
}

/** Reads them; an empty field says nothing, one that cannot be read is told and left out. */
export function readSums(said: MakingSaid, currency: string, findings: Finding[]): SaidSums {
  const read = (field: "rate" | "overhead" | "asked"): number | undefined => {
    const written = said[field], got = String(written ?? "").trim();
    if (written === undefined || got === "") return undefined;
    const money = readMoney(written, said.currency?.trim());
    if (money.wrong !== undefined) {
      findings.push(finding("money-number", { field, got, wrong: money.wrong }));
      return undefined;
    }
    if (money.currency !== "" && currency !== "" && !sameCurrency(money.currency, currency)) findings.push(finding("money-currency", { field, got: money.currency, currency }));
    return money.value;
  };
  const rate = read("rate"), overhead = read("overhead"), asked = read("asked");
  return { ...(rate !== undefined && { rate }), ...(overhead !== undefined && { overhead }), ...(asked !== undefined && { asked }) };
}
