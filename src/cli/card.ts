// `lastwise card --paper A4 --out FILE`
import { basename, dirname } from "node:path";
import type { Command } from "commander";
import { cardPapers, type CardPaper } from "#photo/card.ts";
import { cardPdf } from "#sheets/card.ts";
import { keepResults } from "./out-folder.ts";
import { uninterrupted } from "./uninterrupted.ts";
import { oneOf } from "./values.ts";

interface Options {
  readonly paper: CardPaper;
  readonly out: string;
}

export function addCard(program: Command): void {
  program
    .command("card")
    .summary("print the card for photographs")
    .description("Writes the card that must lie in every photograph of a taped pattern or of a drawing round a last: two sheets to be joined, and how to use them.")
    .requiredOption("--out <file>", "the PDF to write")
    .option("--paper <paper>", "A4 or Letter", oneOf("--paper", cardPapers), "A4")
    .option("--verbose", "show the inner details of a mistake of ours")
    .action(card);
}

async function card({ paper, out }: Options): Promise<void> {
  const bytes = await cardPdf(paper);
  await uninterrupted(() => keepResults(dirname(out), [{ name: basename(out), bytes }]));
  console.log(`Written to ${out}. Print it at 100 % and measure its bars; the last page says how to go on.`);
}
