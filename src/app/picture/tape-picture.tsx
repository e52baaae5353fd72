import { useMemo, type ReactElement } from "react";
import type { Job } from "#job/job.ts";
import type { Pair } from "#job/pair.ts";
import type { TapeMark } from "#tape/said.ts";
import type { Desk } from "../desk.ts";
import { photosOfPair, photosOfTape, useSights, type Sight } from "../photos.ts";
import { followFound, setMark, tapeOf } from "../state/tape-edits.ts";
import { holds, markNames } from "../state/tape-words.ts";
import type { MarkMoves } from "./photo-mark.tsx";
import { PhotoView, type ShownPhoto } from "./photo-view.tsx";
import { tapeDrawing } from "./tape-drawing.ts";

/** The photographs of a taped pattern, with the halves and their marks; or those that still wait to become one. */
export function TapePicture({ desk, pair }: { readonly desk: Desk; readonly pair: Pair }): ReactElement {
  const { waiting } = desk.now;
  const alone = waiting && tapeOf(waiting);
  const wanted = alone ? photosOfTape(desk.now) : photosOfPair(pair);
  const sights = useSights(desk, wanted);
  const tape = !alone && pair.from === "tape" ? pair.tape : undefined;
  const { names } = wanted;
  const said = (alone ?? tapeOf(desk.job))?.marks;
  const photos = useMemo(() => names.map((name): ShownPhoto => {
    const sight: Sight = sights.get(name) ?? { is: "awaited", fraction: 0 };
    return { name, holds: holds(name, tape), sight, drawing: tapeDrawing(name, sight.is === "seen" ? sight.seen.outlines : [], tape, said) };
  }), [names, sights, tape, said]);
  // A tape that waits is no work yet: there is nothing to take back in it.
  const give = (edit: (job: Job) => Job, what: string, gesture?: string): void => (alone && waiting ? desk.changeWaiting(edit(waiting), what, gesture) : desk.change(edit(desk.job), what, gesture));
  const moves: MarkMoves = {
    onMove: (key, [x, y], gesture) => {
      const mark = key as TapeMark;
      const photo = photos.find((p) => p.drawing.marks.some((m) => m.key === key))?.name;
      if (photo) give((job) => setMark(job, mark, { photo, at: [rounded(x), rounded(y)] }), `moving the ${markNames[mark]}`, gesture);
    },
    onDone: () => desk.settle(),
    onFound: (key) => give((job) => followFound(job, key as TapeMark), `the ${markNames[key as TapeMark]} as found`),
  };
  return (
    <>
      <PhotoView photos={photos} moves={moves} />
      {tape && <p className="under">Open rings stand where a mark was found, full ones where you put it, broken ones where it is only estimated. Drag one along the edge, or go to it with Tab and use the arrow keys; Delete has it found again.</p>}
    </>
  );
}

/** To the hundredth of a millimetre, finer than any photograph tells. */
const rounded = (v: number): number => Number(v.toFixed(2));
