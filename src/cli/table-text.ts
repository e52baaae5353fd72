import { readInput } from "./input.ts";
import { asText } from "./text.ts";

/** The text of a table that the maker names; an empty one is told by what reads it. */
export const tableText = (path: string): string => asText(readInput(path, { mayBeEmpty: true }));
