import { useRef, type ReactElement } from "react";
import type { Pair } from "#job/pair.ts";
import type { Desk } from "../desk.ts";
import { photosOfPair, photosOfTape, useSights } from "../photos.ts";
import { shownPhoto } from "../state/shown-photo.ts";
import { setFaceDown, setTapeSide, withPhotos } from "../state/tape-edits.ts";
import { BarSentence } from "./bar-sentence.tsx";
import { Chooser } from "./chooser.tsx";
import { TapeFound } from "./from-tape-found.tsx";
import { TapeGuide } from "./from-tape-guide.tsx";
import { TapeMarks } from "./from-tape-marks.tsx";
import { TapePhotos } from "./from-tape-photos.tsx";
import { MarksNamed } from "./go-to-mark.tsx";
import { SizeField } from "./size-field.tsx";
import { tapeWork } from "./tape-work.ts";
import { WordChoice } from "./word-choice.tsx";

interface FromTapeProps {
  readonly desk: Desk;
  /** Nothing while no pair can be made. */
  readonly pair: Pair | undefined;
}

/** A pattern from the tape that the maker took off her last, or photographs that are still to become one. */
export function FromTape({ desk, pair }: FromTapeProps): ReactElement | null {
  const work = tapeWork(desk);
  const sights = useSights(desk, work?.waiting ? photosOfTape(desk.now) : photosOfPair(pair));
  const chooser = useRef<HTMLInputElement>(null);
  if (!work) return null;
  const { job, said, waiting, change } = work;
  const tape = !waiting && pair?.from === "tape" ? pair.tape : undefined;
  return (
    <>
      {waiting && (
        <p className="sentence">
          <b>These photographs make no pattern yet.</b> <span role="alert">{desk.now.trouble?.sentence}</span> <MarksNamed of={desk.now.trouble?.finding} photoOf={(mark) => said.marks?.[mark]?.photo} />You can add what is missing, take out what does not belong, or say below what lies in them.{" "}
          <button type="button" className="word" onClick={() => desk.changeWaiting(undefined, "letting the photographs go")}>Let them go</button>
        </p>
      )}
      <p className="sentence">
        {waiting ? "They show" : "This pattern is"} the tape off a{" "}
        <WordChoice label="the last that was taped" value={said.side} options={["left", "right"]} onChange={(side) => change(setTapeSide(job, side), "the side")} /> last. It lies with the side that was on the last{" "}
        <WordChoice label="which side lies up" value={said.faceDown ? "up" : "down"} options={["down", "up"]} say={(o) => (o === "down" ? "downward, the outside to be seen" : "upward, the outside hidden")} onChange={(up) => change(setFaceDown(job, up === "up"), "which side lies up")} />.
      </p>
      {!waiting && <SizeField desk={desk} pair={pair} />}
      <BarSentence fields={work.fields} job={job} barMm={said.barMm} />
      <TapePhotos work={work} tape={tape} sights={sights} />
      <p className="sentence"><button type="button" className="word" onClick={() => chooser.current?.click()}>Add a photograph</button>: of the other half, of the bottom, or a better one.</p>
      <Chooser at={chooser} label="photographs to add" accept="image/jpeg,image/png" onFiles={(files) => void desk.openInto(files, (_, names) => {
        // What was just brought is what the maker wants to see.
        if (names[0] !== undefined) shownPhoto.show(names[0]);
        return withPhotos(job, names);
      }, `adding ${files.map((f) => f.name).join(", ")}`)} />
      {tape && <TapeFound tape={tape} />}
      <TapeMarks work={work} tape={tape} sights={sights} />
      {tape && (
        <p className="follows">
          A taped pattern has no last behind it. So there is no last to look at, no stretch and no spring are worked out, and no tape lengths to mark on the last are printed; {tape.bottom ? "insole, outsole and sock come from the bottom you took off." : "without the bottom there is no insole, outsole or sock."} Throat and topline are as you cut them.
        </p>
      )}
      <TapeGuide open={false} />
    </>
  );
}
