// Writes what our fit finds in the example's strips: `tsx crosscheck/strip-fit-export.ts FOLDER` makes FOLDER/strip-fit.json.
import { readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { fitStrips } from "#leather/fit-strips.ts";
import { knownFigures } from "#leather/known-leathers.ts";
import { readStripCsv } from "#leather/strip-csv.ts";

const { strips } = readStripCsv(readFileSync(fileURLToPath(new URL("../examples/strips-goat.csv", import.meta.url)), "utf8"));
const thicknessMm = 0.9;
const { leather, told, restMm } = fitStrips({ known: "goat", thicknessMm, strips });
writeFileSync(join(process.argv[2]!, "strip-fit.json"), JSON.stringify({ thicknessMm, figures: knownFigures.goat, numbers: leather.numbers, told, restMm }));
