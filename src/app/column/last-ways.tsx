import type { ReactElement } from "react";
import type { LastSource } from "#job/job.ts";

interface LastWaysProps {
  /** How the last at hand came in. */
  readonly from: LastSource["from"];
  readonly onOpen: () => void;
}

/** The ways in, each with a sentence. */
export function LastWays({ from, onOpen }: LastWaysProps): ReactElement | null {
  if (from !== "measures") return null;
  return (
    <>
      <h3>Three ways to your own last</h3>
      <ul className="ways">
        <li>Type what your tape and callipers read into the sentences above.</li>
        <li><button type="button" className="word" onClick={onOpen}>Open the scan of your last</button> (STL, OBJ, PLY or GLB), or drop it anywhere on this page.</li>
        <li>Open a pair that you saved to a file before, in the same way.</li>
      </ul>
    </>
  );
}
