import { useEffect, useState, type ReactElement } from "react";
import type { Desk } from "../desk.ts";
import type { Desktop } from "../desktop.ts";
import { listed } from "#base/listed.ts";
import { stationOf } from "../state/spots.ts";
import { percent } from "../state/numbers.ts";
import { measureFields } from "../state/measure-words.ts";
import { unusedKeys } from "../state/unused.ts";
import { stageWords } from "../state/stage-words.ts";
import type { Station } from "../state/stations.ts";
import { sameButMaking } from "../state/same-but-making.ts";

interface LineProps {
  readonly desk: Desk;
  readonly now: Desktop;
}

/** What is being worked out and how far, with Stop. Short work is not worth a word. */
export function BusyLine({ desk, now, planning }: LineProps & { readonly planning: boolean }): ReactElement {
  const [slow, setSlow] = useState(false);
  const busy = now.busy !== undefined;
  useEffect(() => {
    if (!busy) return;
    const timer = setTimeout(() => setSlow(true), 350);
    return () => {
      clearTimeout(timer);
      setSlow(false);
    };
  }, [busy]);
  // What is shown is already that of the job: the worker only catches up, and nobody waits for it.
  const awaited = now.busy?.on === "sheets" || now.busy?.trial === true || now.draft || !sameButMaking(desk.job, now.pair?.job);
  const show = slow && awaited && now.busy;
  return (
    <div className="busy" role="status" data-busy={busy || planning} data-draft={now.draft}>
      {show && (
        <p>
          {stageWords(now.busy)} … <progress max={1} value={now.busy.fraction} aria-label="how far" />{" "}
          {percent(now.busy.fraction, 0)}{" "}
          <button type="button" className="word" onClick={() => desk.stop()}>Stop</button>
        </p>
      )}
    </div>
  );
}

/** What is wrong, in a sentence, unless the open station says it. The last good picture stays under it. */
export function TroubleLine({ desk, now, station }: LineProps & { readonly station: Station }): ReactElement {
  const { trouble, refused } = now;
  // It stands beside its field already.
  const withPhotos = station === "Last" && now.waiting?.last.from === "tape";
  const beside = trouble?.kind === "refused" && (withPhotos || (refused !== undefined && stationOf(refused.spot) === station));
  const correct = trouble?.toCorrect;
  return (
    <div role="alert">
      {trouble && !beside && (
        <p className={trouble.kind}>
          {trouble.sentence}{" "}
          {correct && <><button type="button" className="word" onClick={() => desk.openToCorrect(correct)}>Open it all the same, to correct it</button>{" "}</>}
          <button type="button" className="word" onClick={() => desk.dismiss()}>Close</button>
        </p>
      )}
    </div>
  );
}

/** Numbers of the last that are not used yet, told at every station: picture, pieces and sheets are without them. */
export function UnusedLine({ desk, now }: LineProps): ReactElement {
  const names = unusedKeys(now.unused).map((key) => measureFields[key].name);
  const one = names.length === 1;
  return (
    <div role="status">
      {names.length > 0 && (
        <p className="unused">
          {one ? "One number" : `${names.length} numbers`} at the station Last {one ? "is" : "are"} not used yet: {listed(names)}. Picture, pieces, sheets and a saved file are those of the last before.{" "}
          <button type="button" className="word" onClick={() => desk.letUnusedGo()}>Let {one ? "it" : "them"} go</button>
        </p>
      )}
    </div>
  );
}

/** Before the first picture: work is under way, or it cannot be done and the maker is shown the way out. */
export function NothingYet({ desk, now }: LineProps): ReactElement {
  if (!now.stuck && (now.busy || !now.trouble)) return <p className="nothing">Laying out the work …</p>;
  if (now.refused) return <p className="nothing low">There is no picture yet: one number of this work cannot be used. Correct it where it stands, at the station {stationOf(now.refused.spot)}; all others are kept.</p>;
  return (
    <p className="nothing low">
      There is no picture of this work. Take the last change back, or save the work to a file and then{" "}
      <button type="button" className="word" onClick={() => desk.startAfresh()}>begin with the example last</button>.
    </p>
  );
}
