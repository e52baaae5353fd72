import { useState, type ReactElement } from "react";

/**
 * What is new among `lines`, for those who hear the page: told once, when the hand is off the field, in place of a word at every key.
 * What stood there at first is not told; it is read where it stands.
 */
export function Spoken({ lines, settled }: { readonly lines: readonly string[]; readonly settled: boolean }): ReactElement {
  const [told, tell] = useState<{ readonly lines: readonly string[]; readonly words: string }>({ lines, words: "" });
  if (settled && lines.join("\n") !== told.lines.join("\n")) tell({ lines, words: lines.filter((line) => !told.lines.includes(line)).join(" ") });
  return <p className="unseen" role="status" aria-label="what follows">{told.words}</p>;
}
