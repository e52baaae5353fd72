import { useState, type ReactElement } from "react";
import type { LandmarkName } from "#last/said.ts";
import { askedSpots } from "../state/asked-spots.ts";
import type { WorkInHand } from "../state/work-in-hand.ts";
import type { SeenLast } from "../state/seen-last.ts";
import type { Looking } from "../state/looking.ts";
import { pointKeys, pointNames } from "../state/point-names.ts";
import { setPoint } from "../state/scan-edits.ts";
import { PointHow } from "./last-help.tsx";
import { NotesOn } from "./notes.tsx";

interface LastPointsProps {
  readonly work: WorkInHand;
  readonly seen: SeenLast;
  readonly looking: Looking;
}

/** The named points: each name opens what it is and how it is found, by the program and by hand. */
export function LastPoints({ work, seen, looking }: LastPointsProps): ReactElement {
  const [open, setOpen] = useState<LandmarkName>();
  const { placed } = askedSpots(work.job, seen);
  const again = (name: LandmarkName): void => work.change(setPoint(work.job, name, undefined), `finding the ${pointNames[name]} again`);
  return (
    <>
      <h3>Its points</h3>
      <p className="sentence">
        {pointKeys.length} points were found on it, and its measures are taken between them. Touch a name to read what it is and how to find it by hand; where one lies wrong,{" "}
        <button type="button" className="word" onClick={() => looking.change({ hand: "points" })}>move it in the picture</button>.
      </p>
      <ul className="names" aria-label="Points of the last">
        {pointKeys.map((name) => (
          <li key={name} className={looking.lit === `point ${name}` ? "lit-row" : ""} onPointerEnter={() => looking.change({ lit: `point ${name}` })} onPointerLeave={() => looking.change({ lit: undefined })}>
            <button type="button" className="word" aria-expanded={open === name} aria-controls="about-point" onClick={() => setOpen(open === name ? undefined : name)}>{pointNames[name]}</button>
            {placed.has(name) && ", yours"}
          </li>
        ))}
      </ul>
      <div className="reason" id="about-point" hidden={open === undefined}>{open && <PointHow of={open} />}</div>
      {pointKeys.filter((name) => placed.has(name)).map((name) => (
        <p key={name} className="follows">
          The {pointNames[name]} lies where you put it. <button type="button" className="word" onClick={() => again(name)}>Find the {pointNames[name]} again</button>
        </p>
      ))}
      <NotesOn spots={pointKeys.map((name) => `point ${name}` as const)} />
    </>
  );
}
