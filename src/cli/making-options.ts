// What is said on the command line about making: pairs, prices, shelf, hours.
import { basename } from "node:path";
import type { Command } from "commander";
import type { Finding } from "#base/findings.ts";
import type { Job } from "#job/job.ts";
import { readPriceTable } from "#making/money/read-price-table.ts";
import { readShelfTable } from "#making/money/read-shelf-table.ts";
import type { MakingSaid } from "#making/said.ts";
import { tableText } from "./table-text.ts";
import { oneOf, textUpTo } from "./values.ts";

export interface MakingOptions {
  readonly pairs?: string;
  readonly prices?: string;
  readonly shelf?: string;
  readonly currency?: string;
  readonly rate?: string;
  readonly overhead?: string;
  readonly asked?: string;
  readonly lasts?: string;
  readonly cement?: "contact" | "water-based";
  readonly sessions?: string;
  readonly start?: string;
}

export function addMakingOptions(command: Command): Command {
  return command
    .option("--pairs <number>", "how many pairs are made together: the shopping list and the calendar are for all of them", textUpTo("--pairs", 60))
    .option("--prices <csv>", "what things cost, a row each: what,price,for,size")
    .option("--shelf <csv>", "what lies on your shelf, a row each: what,amount")
    .option("--currency <text>", "what is put behind amounts of money, e.g. EUR", textUpTo("--currency", 8))
    .option("--rate <money>", "what an hour of your work costs", textUpTo("--rate", 60))
    .option("--overhead <money>", "what a pair costs beside material and work: rent, light, tools", textUpTo("--overhead", 60))
    .option("--asked <money>", "what you ask for a pair", textUpTo("--asked", 60))
    .option("--lasts <number>", "how many pairs of lasts of this size you have: as many pairs are lasted at once, with tacks and nails for them", textUpTo("--lasts", 60))
    .option("--cement <kind>", "what soles and margins are stuck with: contact (it has solvents in it) or water-based", oneOf("--cement", ["contact", "water-based"]))
    .option("--sessions <times>", 'when you work, e.g. "Tue 19:00-21:30, Sat 9:00-13:00": the steps are fitted into it around what has to dry', textUpTo("--sessions", 400))
    .option("--start <date>", "first day of work, e.g. 2026-12-01", textUpTo("--start", 40));
}

/** The job with what was said about making put over it, and what is wrong with rows of the tables. */
export function withMakingOptions(job: Job, { prices, shelf, ...said }: MakingOptions): { readonly job: Job; readonly findings: readonly Finding[] } {
  const words = ["pairs", "lasts", "cement", "currency", "rate", "overhead", "asked", "sessions", "start"] as const;
  const own: MakingSaid = Object.fromEntries(words.flatMap((key) => (said[key] === undefined ? [] : [[key, said[key]]])));
  const priced = prices === undefined ? undefined : readPriceTable(tableText(prices), basename(prices));
  const shelved = shelf === undefined ? undefined : readShelfTable(tableText(shelf), basename(shelf));
  const making: MakingSaid = {
    ...job.making,
    ...own,
    ...(priced && { prices: { ...job.making.prices, ...priced.prices }, skins: { ...job.making.skins, ...priced.skins } }),
    ...(shelved && { shelf: { ...job.making.shelf, ...shelved.shelf } }),
  };
  return { job: { ...job, making }, findings: [...(priced?.findings ?? []), ...(shelved?.findings ?? [])] };
}
