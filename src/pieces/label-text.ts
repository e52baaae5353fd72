import type { LabelLine } from "./labels.ts";
import type { Material } from "./piece.ts";

/** What the maker calls the job, and the size as the maker says it. */
export interface Labels {
  readonly title: string;
  readonly size: string;
}

export interface PieceText {
  readonly name: string;
  readonly material: Material;
  /** Say whether the line is net and how the piece is seen; each stands on a line of its own. */
  readonly notes: readonly string[];
  readonly count: number;
  readonly labels: Labels;
}

const lineHeightMm = 2.6;
/** Longer titles run on in a second line, and end there. */
const lineLetters = 24;

/** The lines of a piece's label: its name large, then side and size, material and count, what the line is, and the title. */
export function pieceLines({ name, material, notes, count, labels }: PieceText): readonly LabelLine[] {
  const small = (text: string): LabelLine => ({ text, heightMm: lineHeightMm });
  return [
    { text: name, heightMm: 5 },
    small(labels.size === "" ? "{side}" : `{side}, size ${labels.size}`),
    small(`${material}, cut ${count}`),
    ...notes.map(small),
    ...wrapped(labels.title).slice(0, 2).map(small),
  ];
}

/** Breaks a text between words; a word longer than a line is cut. */
export function wrapped(text: string): readonly string[] {
  const lines: string[] = [];
  let line = "";
  for (const word of text.split(/\s+/).filter((w) => w !== "")) {
    const part = word.slice(0, lineLetters);
    if (line !== "" && line.length + 1 + part.length > lineLetters) {
      lines.push(line);
      line = part;
    } else {
      line = line === "" ? part : `${line} ${part}`;
    }
  }
  if (line !== "") lines.push(line);
  return lines;
}
