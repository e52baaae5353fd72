import type { Finding } from "#base/findings.ts";
import { listed } from "#base/listed.ts";
import { Refusal } from "#base/refusal.ts";
import { readPriceTable } from "#making/money/read-price-table.ts";
import { readShelfTable } from "#making/money/read-shelf-table.ts";
import type { MakingSaid } from "#making/said.ts";
import type { Job } from "#job/job.ts";
import type { Desk } from "./desk.ts";
import { Heard } from "./heard.ts";
import { bytesOf } from "./read-file.ts";
import { setMaking } from "./state/making-edits.ts";

type Part = Pick<MakingSaid, "prices" | "skins" | "shelf">;
interface Taken {
  readonly what: "prices" | "shelf";
  readonly part: Part;
  /** In words; empty where nothing could be taken. */
  readonly count: string;
  readonly findings: readonly Finding[];
}

type Onto = Pick<Desk, "job" | "change">;

interface TableNow {
  /** What became of the table that was read last. */
  readonly said: string | undefined;
  readonly findings: readonly Finding[];
  /** The work as it was left: what is said of the table goes when that is taken back. */
  readonly of: Job | undefined;
}

/** Takes tables of prices and of the shelf, opened or dropped on the page, and tells what was found in the last one. */
class MakingTables extends Heard<TableNow> {
  constructor() {
    super({ said: undefined, findings: [], of: undefined });
  }

  async open(desk: Onto, file: File): Promise<void> {
    try {
      this.take(desk, file.name, new TextDecoder().decode(await bytesOf(file)));
    } catch (error) {
      if (!(error instanceof Refusal)) throw error;
      this.show({ said: "Nothing was changed.", findings: [error.finding], of: desk.job });
    }
  }

  /** What the table names is written over, all else stays. */
  take(desk: Onto, name: string, text: string): void {
    const { making } = desk.job;
    const { what, part, count, findings } = isShelf(text) ? shelfIn(text, name) : pricesIn(text, name);
    if (count === "") return this.show({ said: `Nothing was taken from ${name}.`, findings, of: desk.job });
    const joined: Part = {
      ...(part.prices && { prices: { ...making.prices, ...part.prices } }),
      ...(part.skins && { skins: { ...making.skins, ...part.skins } }),
      ...(part.shelf && { shelf: { ...making.shelf, ...part.shelf } }),
    };
    const job = setMaking(desk.job, joined);
    desk.change(job, `a table of the ${what}`);
    this.show({ said: `Read from ${name}: ${count}.`, findings, of: job });
  }
}

/** A table of the shelf has a column for the amount, and none for the price. */
function isShelf(text: string): boolean {
  const head = text.split(/\r?\n/).find((line) => line.trim() !== "" && !line.startsWith("#"))?.toLowerCase() ?? "";
  return head.includes("amount") && !head.includes("price");
}

function shelfIn(text: string, name: string): Taken {
  const { shelf, findings } = readShelfTable(text, name);
  return { what: "shelf", part: { shelf }, count: counted(shelf, "one thing on the shelf", "things on the shelf"), findings };
}

function pricesIn(text: string, name: string): Taken {
  const { prices, skins, findings } = readPriceTable(text, name);
  return { what: "prices", part: { prices, ...(Object.keys(skins).length > 0 && { skins }) }, count: listed([counted(prices, "one price", "prices"), counted(skins, "the size of one thing", "sizes")].filter((words) => words !== "")), findings };
}

const counted = (of: object, one: string, several: string): string => {
  const { length } = Object.keys(of);
  return length === 0 ? "" : length === 1 ? one : `${length} ${several}`;
};

export const makingTables = new MakingTables();
