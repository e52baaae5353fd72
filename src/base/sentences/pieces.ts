import { sentence } from "../sentence.ts";

export const pieceSentences = {
  "piece-crosses-itself": sentence("look", (d: { piece: string }) => `The outline of the ${d.piece} crosses itself. Narrow its allowance or smooth the line there.`),
};
