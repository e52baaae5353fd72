import type { ReactElement } from "react";

/** What the feather line is, how it was found, and how a maker finds it. */
export function FeatherHow(): ReactElement {
  return (
    <>
      <p>The sharp edge all round the bottom: here the upper turns under and the insole begins. Every height of the topline and every lasting margin is measured from it.</p>
      <p><b>Here:</b> it is the way round the last on which the surface turns most sharply, sought for the whole way at once, so that one worn stretch does not break it. Where the edge turns by less than a third of a right angle within 3 mm it counts as soft.</p>
      <p><b>By hand:</b> run a finger or the side of a pencil along the edge. On a taped last, stroke a fine file from outside inwards: it cuts the tape cleanly on the edge. A worn edge is best marked with a thin strip of tape before the last is scanned.</p>
      <p className="source">Common practice, no source.</p>
    </>
  );
}
