import type { ReactElement } from "react";
import type { Side } from "#last/last.ts";
import type { Desk } from "../desk.ts";
import { isExample, onMeasures } from "../state/edits.ts";
import { TapeGuide } from "./from-tape-guide.tsx";

interface LastWaysProps {
  readonly desk: Desk;
  readonly side: Side;
  readonly onOpen: () => void;
  readonly onPictures: () => void;
}

/** The ways in, each with a sentence; on a last of the maker's own, the other ways in one. */
export function LastWays({ desk, side, onOpen, onPictures }: LastWaysProps): ReactElement {
  const word = (text: string, act: () => void): ReactElement => <button type="button" className="word" onClick={act}>{text}</button>;
  if (desk.job.last.from === "measures") {
    return (
      <section className="ways-in" aria-label="Ways to your own last">
        <h3>Three ways to your own last</h3>
        <ul className="ways">
          <li>{word("Open the scan of your last", onOpen)} (STL, OBJ, PLY, OFF, 3MF or GLB), or drop it on this page. Unit, side, feather line and points are found on it; you put right what is wrong.</li>
          <li>Type what tape and callipers read into the sentences {isExample(desk.job) ? "below" : "above"}. The shape between the numbers is a stand-in.</li>
          <li>{word("Open photographs of your tape", onPictures)}, cut off the last and laid flat inside the frame of the printed card, or drop them here. The pattern then needs no last.</li>
        </ul>
        <TapeGuide open={false} />
        <p className="follows">A pair that you saved to a file opens in the same way as a scan.</p>
      </section>
    );
  }
  return (
    <p className="sentence">
      For another last: {word("open a scan", onOpen)}, {word("start from measures", () => desk.change(desk.begun(onMeasures(desk.job, side)), "starting from measures"))},{" "}
      {word("open photographs of a tape", onPictures)}, or {word("go back to the example last", () => desk.startAfresh())}.
    </p>
  );
}
