import type { Mark, Piece, Strip } from "#pieces/piece.ts";

/** What is drawn on a piece, in words: the same mark inside and outside is told once. */
export function marksTold(pieces: readonly Piece[]): string {
  const rows = pieces.map(({ name, marks }) => {
    const of = (...is: readonly ((mark: Mark) => boolean)[]) => told(marks.filter((mark) => is.every((one) => one(mark))));
    const line = (mark: Mark) => mark.kind === "line";
    const placed = (mark: Mark) => mark.kind === "line" && (mark.use === "place" || mark.use === "joint" || mark.use === "heel");
    const not = (is: (mark: Mark) => boolean) => (mark: Mark) => !is(mark);
    const worked = of(line, not(placed)), laid = of(line, placed);
    const notches = of((m) => m.kind === "notch"), pricks = of((m) => m.kind === "prick");
    return `| ${name} | ${worked} | ${laid} | ${notches} | ${pricks} |`;
  });
  return ["| piece | lines to work by | lines that show a place | notches | pricks |", "| --- | --- | --- | --- | --- |", ...rows].join("\n");
}

/** Names of marks, each once; the grips of the lasting drafts by their numbers alone. */
function told(marks: readonly Mark[]): string {
  const names = [...new Set(marks.flatMap((mark) => (mark.kind === "text" ? [] : [mark.name])))];
  const both = (name: string): string | undefined => (name.endsWith(", inside") && names.includes(name.replace(/inside$/, "outside")) ? name.replace(/, inside$/, ", both sides") : undefined);
  const kept = names.filter((name) => !(name.endsWith(", outside") && !name.startsWith("draft ") && names.includes(name.replace(/outside$/, "inside"))));
  const grips = kept.flatMap((name) => /^draft (\d+), /.exec(name)?.[1] ?? []);
  const words = [...kept.filter((name) => !/^draft \d+, /.test(name)).map((name) => both(name) ?? name), ...(grips.length > 0 ? [`grips of the lasting drafts ${grips.join(", ")}`] : [])];
  return words.join("; ") || "–";
}

/** Lengths to cut off a roll for the example pair. */
export const stripsTold = (strips: readonly Strip[]): string =>
  ["| strip | width | length | for one pair | where |", "| --- | --- | --- | --- | --- |", ...strips.map(({ name, widthMm, lengthMm, perPair, where }) => `| ${name} | ${widthMm} mm | ${Math.round(lengthMm)} mm | ${perPair} | ${where} |`)].join("\n");
