import type { ReactElement } from "react";
import type { TapedPair } from "#job/pair.ts";
import { meanLength } from "#tape/taped-shell.ts";
import { mm } from "../state/numbers.ts";

/** The stations of throat, topline and shell for a taped pattern: it brings them with it, and what needs a last is said plainly. */
export function TapedLines({ pair: { tape } }: { readonly pair: TapedPair }): ReactElement {
  return (
    <>
      <p className="sentence">
        Throat and topline are those you drew on the tape: the throat lies <b>{mm(meanLength(tape, "centre"))}</b> behind the toe’s feather edge, the back stands <b>{mm(meanLength(tape, "back"))}</b> high, both as the mean of the two halves.
      </p>
      <p className="follows">There is no last here for other lines to be drawn on. To change them, draw the new line on the tape, cut, and photograph it again; or bring the last in by a scan or by measures.</p>
    </>
  );
}

export function TapedShellWords({ pair: { tape: { medial, lateral } } }: { readonly pair: TapedPair }): ReactElement {
  const topline = medial.lengths.topline + lateral.lengths.topline;
  return (
    <>
      <p className="sentence">
        The shell is your tape, laid flat by your own hand. Its topline is <b>{mm(topline)}</b> round, {mm(medial.lengths.topline)} on the inner half and {mm(lateral.lengths.topline)} on the outer. The slits of the feather edge stand open {mm(medial.lengths.slitsOpen + lateral.lengths.slitsOpen)} in all.
      </p>
      <p className="follows">How far the leather must stretch, and what spring would do, can only be worked out against the last’s own surface. Lay a paper or felt trial on the last before you cut leather.</p>
    </>
  );
}
