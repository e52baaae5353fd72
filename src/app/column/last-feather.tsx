import { useState, type ReactElement } from "react";
import type { FeatherLine, Point3 } from "#last/last.ts";
import { surenessInk } from "../picture/found-lines.ts";
import { surenessOf, type Sureness } from "../picture/feather-runs.ts";
import { nearestIndex } from "../picture/nearest-index.ts";
import { askedSpots } from "../state/asked-spots.ts";
import { toFile } from "../state/file-place.ts";
import type { WorkInHand } from "../state/work-in-hand.ts";
import type { SeenLast } from "../state/seen-last.ts";
import type { Looking } from "../state/looking.ts";
import { mm, percent } from "../state/numbers.ts";
import { placeOf } from "../state/places.ts";
import { addPull, dropPull } from "../state/scan-edits.ts";
import { FeatherHow } from "./feather-how.tsx";
import { NotesOn } from "./notes.tsx";
import { WithWhy } from "./why.tsx";
import { WordChoice } from "./word-choice.tsx";

interface LastFeatherProps {
  readonly work: WorkInHand;
  readonly seen: SeenLast;
  readonly looking: Looking;
}

const flanks = ["inner", "outer"] as const;
/** Places along half of the line, as shares of the way from seat to toe. */
const stretches = { "at the toe": 0.97, "before the joint": 0.86, "at the joint": 0.7, "at the waist": 0.45, "at the heel": 0.2, "at the back": 0.03 } as const;
type Stretch = keyof typeof stretches;

/** The feather line: how sure it is, and the places at which the maker has taken hold of it. */
export function LastFeather({ work, seen, looking }: LastFeatherProps): ReactElement {
  const { last } = seen;
  const { measures: m, feather } = last;
  const { pulls } = askedSpots(work.job, seen);
  const [flank, setFlank] = useState<(typeof flanks)[number]>("inner");
  const [stretch, setStretch] = useState<Stretch>("at the waist");
  const takeHold = (): void => {
    work.change(addPull(work.job, toFile(last.placement, featherAt(feather, flank, stretches[stretch]))), "taking hold of the feather line");
    looking.change({ hand: "feather", from: { name: "below" } });
    focusSoon(`pull ${pulls.length}`);
  };
  return (
    <>
      <h3>Its feather line</h3>
      <WithWhy name="feather line" word="how" why={<FeatherHow />} spots={[]}>
        It is {mm(m.featherLength, 0)} round: {mm(m.featherMedial, 0)} on the inner side, {mm(m.featherLateral, 0)} on the outer. {sureWords(feather, farthestPull(feather, pulls))}
      </WithWhy>
      <Patterns />
      <NotesOn spots={["scan feather"]} />
      <p className="sentence">
        Where it lies beside the edge,{" "}
        <button type="button" className="word" onClick={() => looking.change({ hand: "feather", from: { name: "below" } })}>take hold of it in the picture</button> at one of its rings and slide it on to the edge. Or take hold of it on
        the <WordChoice label="side of the feather line" value={flank} options={flanks} onChange={setFlank} /> side{" "}
        <WordChoice label="place on the feather line" value={stretch} options={Object.keys(stretches) as Stretch[]} onChange={setStretch} />{" "}
        <button type="button" className="word" onClick={takeHold}>here</button>, and move it with the arrow keys.
      </p>
      {pulls.length > 0 && (
        <ol className="spots" aria-label="Where you have taken hold of the feather line">
          {pulls.map((p, i) => (
            <li key={`${i} ${p.join()}`} className={looking.lit === `pull ${i}` ? "lit-row" : ""} onPointerEnter={() => looking.change({ lit: `pull ${i}` })} onPointerLeave={() => looking.change({ lit: undefined })}>
              Place {i + 1}, {placeOf(last, p)}.{" "}
              <button type="button" className="word" aria-label={`take out place ${i + 1}`} onClick={() => work.change(dropPull(work.job, i), `letting go of place ${i + 1} on the feather line`)}>take out</button>
            </li>
          ))}
        </ol>
      )}
    </>
  );
}

/** A point of the line on one side, at a share of the way from seat to toe. */
function featherAt({ points, toeIndex }: FeatherLine, flank: "inner" | "outer", share: number): Point3 {
  const n = points.length / 3;
  const at = flank === "inner" ? share * toeIndex : n - share * (n - toeIndex);
  const i = Math.round(at) % n;
  return [points[3 * i]!, points[3 * i + 1]!, points[3 * i + 2]!];
}

/** The handle is there when the page has been drawn anew. */
function focusSoon(spot: string): void {
  setTimeout(() => document.querySelector<SVGGElement>(`[data-spot="${spot}"]`)?.focus(), 60);
}

/** A place of the maker's farther from the line than this, mm, is not on it. */
const besideMm = 3;

/** How far the line passes by the places that the maker set, at most; mm. */
function farthestPull({ points }: FeatherLine, pulls: readonly Point3[]): { readonly place: number; readonly mm: number } | undefined {
  const off = pulls.map((p, i) => {
    const k = nearestIndex(points, p);
    return { place: i + 1, mm: Math.hypot(points[3 * k]! - p[0], points[3 * k + 1]! - p[1], points[3 * k + 2]! - p[2]) };
  });
  return off.reduce<(typeof off)[number] | undefined>((most, o) => (most && most.mm >= o.mm ? most : o), undefined);
}

function sureWords({ confidence }: FeatherLine, off: { readonly place: number; readonly mm: number } | undefined): string {
  const share = (of: Sureness): number => confidence.reduce((sum, c) => sum + Number(surenessOf(c) === of), 0) / confidence.length;
  const [soft, guessed] = [share("soft"), share("guessed")];
  const beside = off && off.mm > besideMm ? ` It passes ${mm(off.mm)} beside your place ${off.place}: look at it there.` : "";
  if (soft + guessed < 0.005) return beside ? `The edge it was found on is clear.${beside}` : "Its edge is clear all the way.";
  const parts = [soft >= 0.005 ? `soft on ${percent(soft, 0)}` : "", guessed >= 0.005 ? `hardly there on ${percent(guessed, 0)}` : ""].filter((w) => w !== "");
  return `Its edge is clear on ${percent(1 - soft - guessed, 0)} of the way, ${parts.join(" and ")}.${beside}`;
}

const told: Readonly<Record<Sureness, string>> = { clear: "clear edge", soft: "soft edge", guessed: "a guess" };

/** What solid, broken and dotted mean. */
function Patterns(): ReactElement {
  return (
    <p className="patterns">
      {(Object.keys(told) as Sureness[]).map((s) => {
        const { accent, dash } = surenessInk[s];
        return (
          <span key={s}>
            <svg width="44" height="10" aria-hidden="true"><path d="M1 5H43" className={accent ? "line accent" : "line"} strokeWidth="3" strokeLinecap="butt" strokeDasharray={dash?.map((d) => d * 2.4).join(" ")} style={{ strokeLinecap: "butt" }} /></svg> {told[s]}
          </span>
        );
      })}
    </p>
  );
}
