import type { Piece } from "#pieces/piece.ts";

/** One pull of the pincers as it is numbered on the lasting margin. */
export interface NumberedDraft {
  readonly number: number;
  /** Where it is taken: "toe corner, inside". */
  readonly name: string;
}

/** The drafts that some pieces show, in the order in which they are taken, each once. */
export function draftsOn(pieces: readonly Piece[]): readonly NumberedDraft[] {
  const found = new Map<number, string>();
  for (const mark of pieces.flatMap((p) => p.marks)) {
    if (mark.kind !== "line" || mark.as !== "grip") continue;
    const [, number, name] = /^draft (\d+), (.+)$/.exec(mark.name) ?? [];
    if (number && name) found.set(Number(number), name);
  }
  return [...found].map(([number, name]) => ({ number, name })).sort((a, b) => a.number - b.number);
}

/** What the small numbers on the lasting margin mean, or nothing where none is printed. */
export function draftsInWords(pieces: readonly Piece[]): string {
  const drafts = draftsOn(pieces);
  if (drafts.length === 0) return "";
  return `Last in the order of the small numbers on the lasting margin, each pull at its short line: ${drafts.map((d) => `${d.number} ${d.name}`).join("; ")}.`;
}
