import { useMemo, type ReactElement } from "react";
import { describeLast } from "#last/describe.ts";
import type { Last } from "#last/last.ts";
import { shapeWords } from "../state/shape-words.ts";

/** What kind of last it is, read first: a maker sees at once whether it is hers. */
export function ShapeSentence({ last }: { readonly last: Last }): ReactElement {
  const words = useMemo(() => shapeWords(describeLast(last)), [last]);
  return <p className="follows">{words}</p>;
}
