// `lastwise strip CSV`
import { basename } from "node:path";
import type { Command } from "commander";
import { fitStrips } from "#leather/fit-strips.ts";
import { knownLeathers, leatherThickness, type KnownLeather } from "#leather/leather.ts";
import { knownList } from "#leather/strip-words.ts";
import { exitFor } from "./exit.ts";
import { sayStrips, stripReport } from "./say-strips.ts";
import { readStripTable } from "./strip-table.ts";
import { millimetres, oneOf, textUpTo } from "./values.ts";

interface Options {
  readonly like?: KnownLeather;
  readonly name?: string;
  readonly thickness?: number;
  readonly json?: true;
}

const help = `
The file is a table with a row for every reading, as a spreadsheet saves it (CSV):

  way,width mm,between marks mm,load,unit,length mm,after a minute mm
  along,20,150,0.5,kg,153,
  along,20,150,3,kg,162.5,152
  across,20,150,0.5,kg,156,

Way: along (the way that gives least), across, or 45. Load in N, g, kg, oz or lb. The last column may be left empty. An empty line
begins a new strip; lines that begin with # are passed over. With decimal commas, part the cells by semicolons. A unit may stand behind a
number: 500 g, 15 cm.

For example:
  lastwise strip my-goat.csv --like goat --thickness 0.9

How to cut, hang and read the strips: docs/guide/leather.md. Invented readings to try: examples/strips-goat.csv`;

export function addStrip(program: Command): void {
  program
    .command("strip")
    .summary("find out what a leather gives, from strips with loads on them")
    .description("Reads what you measured on strips of leather with weights hung on them, and says how much the leather gives along, across and at 45 degrees, how sure that is, and which readings are doubtful.")
    .argument("<csv>", "the table of readings")
    .option("--like <leather>", `the kind it is most like: ${knownList}; tells what to expect where strips do not say (goat)`, oneOf("--like", knownLeathers))
    .option("--name <text>", "what you call it", textUpTo("--name", 80))
    .option("--thickness <mm>", "thickness of the strips", millimetres("--thickness", leatherThickness.least, leatherThickness.most))
    .option("--json", "print one JSON object instead of sentences")
    .option("--verbose", "show the inner details of a mistake of ours")
    .addHelpText("after", help)
    .action(strip);
}

function strip(path: string, { like, name, thickness, json }: Options): void {
  const read = readStripTable(path);
  const said = { known: like ?? "goat", ...(name === undefined ? {} : { name }), ...(thickness === undefined ? {} : { thicknessMm: thickness }), strips: read.strips };
  const fit = fitStrips(said, { where: read.where });
  const findings = [...read.findings, ...fit.findings];
  console.log(json ? JSON.stringify(stripReport(said, fit, findings), null, 1) : sayStrips(said, fit, findings, basename(path)));
  process.exitCode = exitFor(findings);
}
