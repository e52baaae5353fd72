import type { Finding } from "#base/findings.ts";
import { Refusal } from "#base/refusal.ts";
import { readPriceTable } from "#making/money/read-price-table.ts";
import { readShelfTable } from "#making/money/read-shelf-table.ts";
import type { MakingSaid } from "#making/said.ts";
import type { Desk } from "./desk.ts";
import { Heard } from "./heard.ts";
import { bytesOf } from "./read-file.ts";
import { setMaking } from "./state/making-edits.ts";

type Part = Pick<MakingSaid, "prices" | "skins" | "shelf">;
interface Taken {
  readonly what: "prices" | "shelf";
  readonly part: Part;
  readonly count: number;
  readonly findings: readonly Finding[];
}

interface TableNow {
  /** What became of the table that was read last. */
  readonly said: string | undefined;
  readonly findings: readonly Finding[];
}

/** Takes tables of prices and of the shelf, opened or dropped on the page, and tells what was found in the last one. */
class MakingTables extends Heard<TableNow> {
  constructor() {
    super({ said: undefined, findings: [] });
  }

  async open(desk: Desk, file: File): Promise<void> {
    try {
      this.take(desk, file.name, new TextDecoder().decode(await bytesOf(file)));
    } catch (error) {
      if (!(error instanceof Refusal)) throw error;
      this.show({ said: "Nothing was changed.", findings: [error.finding] });
    }
  }

  /** What the table names is written over, all else stays. */
  take(desk: Desk, name: string, text: string): void {
    const { making } = desk.job;
    const { what, part, count, findings } = isShelf(text) ? shelfIn(text, name) : pricesIn(text, name);
    this.show({ said: count === 0 ? `Nothing was taken from ${name}.` : `Read from ${name}: ${count} of the ${what}.`, findings });
    if (count === 0) return;
    const joined: Part = {
      ...(part.prices && { prices: { ...making.prices, ...part.prices } }),
      ...(part.skins && { skins: { ...making.skins, ...part.skins } }),
      ...(part.shelf && { shelf: { ...making.shelf, ...part.shelf } }),
    };
    desk.change(setMaking(desk.job, joined), `a table of the ${what}`);
  }
}

/** A table of the shelf has a column for the amount, and none for the price. */
function isShelf(text: string): boolean {
  const head = text.split(/\r?\n/).find((line) => line.trim() !== "" && !line.startsWith("#"))?.toLowerCase() ?? "";
  return head.includes("amount") && !head.includes("price");
}

function shelfIn(text: string, name: string): Taken {
  const { shelf, findings } = readShelfTable(text, name);
  return { what: "shelf", part: { shelf }, count: Object.keys(shelf).length, findings };
}

function pricesIn(text: string, name: string): Taken {
  const { prices, skins, findings } = readPriceTable(text, name);
  return { what: "prices", part: { prices, ...(Object.keys(skins).length > 0 && { skins }) }, count: Object.keys(prices).length + Object.keys(skins).length, findings };
}

export const makingTables = new MakingTables();
