import { useContext, useState, type ReactElement } from "react";
import type { TapeMark } from "#tape/said.ts";
import type { TapedPoint, TapedShell } from "#tape/taped-shell.ts";
import { area } from "#plane/measure.ts";
import type { Sight } from "../photos.ts";
import { partWay, trackOf } from "../state/on-outline.ts";
import { marksOf } from "../state/spots.ts";
import type { Spot } from "../state/spot.ts";
import { followFound, setMark } from "../state/tape-edits.ts";
import { corners, halfNames, howWords, markNames, markOf } from "../state/tape-words.ts";
import { goToMark, MarksNamed } from "./go-to-mark.tsx";
import { FoundHere, NotesOn } from "./notes.tsx";
import type { TapeWork } from "./tape-work.ts";

interface TapeMarksProps {
  readonly work: TapeWork;
  readonly tape: TapedShell | undefined;
  readonly sights: ReadonlyMap<string, Sight>;
}

interface Row {
  readonly name: string;
  readonly photo: string | undefined;
  readonly marks: readonly (readonly [TapeMark, TapedPoint | undefined])[];
}

const allMarks = (Object.keys(markNames) as TapeMark[]).map((mark): Spot => `mark ${mark}`);
const halves = ["medial", "lateral"] as const;
const ofBottom = [["bottomToe", "toe"], ["bottomSeat", "seat"], ["bottomJointMedial", "jointMedial"], ["bottomJointLateral", "jointLateral"]] as const;

/** Every mark with how it came to its place, the way to its handle in the picture, and the way back to where it is found. */
export function TapeMarks({ work, tape, sights }: TapeMarksProps): ReactElement {
  const [open, setOpen] = useState(false);
  const { here } = useContext(FoundHere);
  const rows: readonly Row[] = [
    ...halves.map((half): Row => ({ name: halfNames[half], photo: tape?.[half].photo, marks: corners.map((c) => [markOf(c, half), tape?.[half].points[c]]) })),
    ...(tape?.bottom ? [{ name: "bottom", photo: tape.bottom.photo, marks: ofBottom.map(([key, name]) => [key, tape.bottom!.points[name]] as const) }] : []),
  ];
  const said = Object.keys(work.said.marks ?? {}).length;
  return (
    <div className="sentence">
      <p>
        {tape
          ? <>Toe, throat, back, seat and joint of each half are marked in the picture{said > 0 ? `, ${said === 1 ? "one" : said} of them where you put ${said === 1 ? "it" : "them"}` : ""}.</>
          : "You can say yourself where toe, throat, back and seat of each half are."}{" "}
        <button type="button" className="word why" aria-expanded={open || !tape} aria-controls="tape-marks" onClick={() => setOpen(!open)}>the marks</button>
      </p>
      <div className="reason" id="tape-marks" hidden={!open && tape !== undefined}>
        {rows.map(({ name, photo, marks }) => (
          <ul key={name} className="marks" aria-label={`marks of the ${name}`}>
            <li><b>{name}</b></li>
            {marks.map(([mark, point]) => <MarkRow key={mark} mark={mark} point={point} photo={photo} work={work} sights={sights} />)}
          </ul>
        ))}
      </div>
      {tape && <NotesOn spots={allMarks} />}
      {tape && here.some((f) => marksOf(f).length > 0) && <p className="follows">{here.map((f, i) => <MarksNamed key={i} of={f} photoOf={(mark) => work.said.marks?.[mark]?.photo} />)}</p>}
    </div>
  );
}

function MarkRow({ mark, point, photo, work, sights }: Omit<TapeMarksProps, "tape"> & { readonly mark: TapeMark; readonly point: TapedPoint | undefined; readonly photo: string | undefined }): ReactElement {
  const { job, said, change } = work;
  const placed = said.marks?.[mark] !== undefined;
  const name = markNames[mark];
  const short = name.split(",")[0]!;
  const put = (): void => {
    const place = roomFor(mark, sights);
    if (place) change(setMark(job, mark, place), `placing the ${name}`);
  };
  return (
    <li>
      {point || placed
        ? <button type="button" className="word" aria-label={`go to ${name} in the picture`} onClick={() => goToMark(mark, photo ?? said.marks?.[mark]?.photo)}>{short}</button>
        : short}{" "}
      {point ? howWords[point.how] : placed ? "placed by you" : <button type="button" className="word" aria-label={`put ${name} in the picture`} onClick={put}>put it in the picture</button>}
      {placed && <> · <button type="button" className="word" aria-label={`${name} as found again`} onClick={() => change(followFound(job, mark), `the ${name} as found`)}>as found again</button></>}
    </li>
  );
}

/** Smaller outlines are scraps, mm². */
const scrap = 4000;

/** Where a mark comes to lie first, for the maker to drag it: inner ones on the first large outline, outer ones on the next. */
function roomFor(mark: TapeMark, sights: ReadonlyMap<string, Sight>): { readonly photo: string; readonly at: readonly [number, number] } | undefined {
  const large = [...sights].flatMap(([photo, sight]) => (sight.is === "seen" ? sight.seen.outlines.filter((o) => area(o) > scrap).map((outline) => ({ photo, outline })) : []));
  const at = large[mark.endsWith("Lateral") ? 1 : 0] ?? large[0];
  const corner = corners.findIndex((c) => mark.startsWith(c));
  return at && { photo: at.photo, at: partWay(trackOf(at.outline), (corner + 0.5) / corners.length) };
}
