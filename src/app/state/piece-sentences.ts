import type { Chosen } from "#pieces/choices.ts";
import type { PieceWords } from "./piece-group.ts";
import { fallbackWords, pieceWords } from "./piece-words.ts";

/** A sentence cut into its words and numbers. */
export interface PieceSentence extends Omit<PieceWords, "words"> {
  readonly parts: readonly (string | { readonly key: string })[];
}

const inBraces = /\{(\w+)\}/;

export function partsOf(words: string): PieceSentence["parts"] {
  return words.split(inBraces).map((part, i) => (i % 2 === 1 ? { key: part } : part)).filter((part) => part !== "");
}

/** The keys of the numbers in a sentence. */
export const keysOf = ({ parts }: PieceSentence): readonly string[] => parts.flatMap((p) => (typeof p === "string" ? [] : [p.key]));

/**
 * The sentences that count for what was chosen. A number among `keys` that no sentence has words for stands in a plain one of its group,
 * so that none is out of reach; a sentence with a number that is not among them is left out.
 * @param named the name of the rule of a number
 * @param needed numbers that are refused or spoken of, and stand in their sentence whatever was chosen
 */
export function sentencesFor(chosen: Chosen, keys: readonly string[], named: (key: string) => string, needed: ReadonlySet<string> = new Set()): readonly PieceSentence[] {
  const all = pieceWords.map(({ words, ...rest }): PieceSentence => ({ ...rest, parts: partsOf(words) })).filter((s) => keysOf(s).every((k) => keys.includes(k)));
  const worded = new Set(all.flatMap(keysOf));
  const plainly = (key: string): PieceSentence => {
    const { words, ...rest } = fallbackWords(key, named(key));
    return { ...rest, parts: partsOf(words) };
  };
  const plain = keys.filter((key) => !worded.has(key)).map(plainly);
  const counting = [...all, ...plain].filter((s) => s.when?.(chosen) ?? true);
  const met = new Set(counting.flatMap(keysOf));
  // One more sentence for each number that is needed and stands in none of them.
  const missing = [...needed].filter((key) => keys.includes(key) && !met.has(key)).map(plainly);
  return [...counting, ...missing];
}

/** Those of one piece, and the rest. First come the numbers of its own group, then what it follows from besides. */
export function ofPiece(sentences: readonly PieceSentence[], piece: { readonly name: string; readonly group: string } | undefined): { readonly own: readonly PieceSentence[]; readonly rest: readonly PieceSentence[] } {
  const mine = piece === undefined ? [] : sentences.filter((s) => s.governs.test(piece.name));
  const own = [...mine.filter((s) => s.group === piece?.group), ...mine.filter((s) => s.group !== piece?.group)];
  return { own, rest: sentences.filter((s) => !own.includes(s)) };
}
