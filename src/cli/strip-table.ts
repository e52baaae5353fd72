import { finding } from "#base/findings.ts";
import { Refusal } from "#base/refusal.ts";
import { readStripCsv, type StripsRead } from "#leather/strip-csv.ts";
import { readInput } from "./input.ts";
import { asText } from "./text.ts";

/** Readings of strips from a file. Throws a Refusal for anything that is not such a table; an empty file is told as one. */
export function readStripTable(path: string): StripsRead {
  try {
    return readStripCsv(asText(readInput(path)));
  } catch (error) {
    if (error instanceof Refusal && error.finding.code === "file-empty") throw new Refusal(finding("strips-no-rows", {}));
    throw error;
  }
}
