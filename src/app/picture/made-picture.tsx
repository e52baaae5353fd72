import { useMemo, useState, type ReactElement, type ReactNode } from "react";
import type { LastPair } from "#job/pair.ts";
import type { Desk } from "../desk.ts";
import { photosOfPair, useSights } from "../photos.ts";
import type { MarkMoves } from "./photo-mark.tsx";
import { PhotoView, type ShownPhoto } from "./photo-view.tsx";
import { tapeDrawing } from "./tape-drawing.ts";

interface MadePictureProps {
  readonly desk: Desk;
  readonly pair: LastPair;
  /** The last itself. */
  readonly children: ReactNode;
}

const nothingToMove: MarkMoves = { onMove: () => {}, onDone: () => {}, onFound: () => {} };

/** A last made from measures and drawings: the last, or the photographs of the drawings with the line that was traced in them. */
export function MadePicture({ desk, pair, children }: MadePictureProps): ReactElement {
  const [drawings, show] = useState(false);
  const sights = useSights(desk, photosOfPair(pair));
  const photos = useMemo(() => (pair.traces ?? []).map(({ photo: name }): ShownPhoto => {
    const sight = sights.get(name) ?? { is: "awaited", fraction: 0 };
    const { last } = pair.job;
    const holds = last.from === "measures" && last.outlines?.bottom === name ? "the drawing round the bottom" : "the drawing round the side";
    // The largest outline is the last's; what else lies on the paper is drawn thin.
    const all = tapeDrawing(name, sight.is === "seen" ? sight.seen.outlines : [], undefined, undefined);
    return { name, holds, sight, drawing: { ...all, lines: all.lines.map((l, i) => (i === 0 ? l : { ...l, use: "slight" })) } };
  }), [pair, sights]);
  return (
    <>
      {drawings ? <PhotoView photos={photos} moves={nothingToMove} /> : children}
      <p className="under choose-photo">
        <span>Look at</span>
        <button type="button" className="word" aria-pressed={!drawings} onClick={() => show(false)}>the last made</button>
        <button type="button" className="word" aria-pressed={drawings} onClick={() => show(true)}>{photos.length === 1 ? "the drawing" : "the drawings"}</button>
      </p>
    </>
  );
}
