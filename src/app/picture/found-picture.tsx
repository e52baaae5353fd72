import { useMemo, type ReactElement } from "react";
import type { Desk } from "../desk.ts";
import { hands, handWords } from "../state/hand.ts";
import { scanWork } from "../state/scan-work.ts";
import type { SeenLast } from "../state/seen-last.ts";
import type { Looking } from "../state/looking.ts";
import type { ApartMap } from "./apart-map.ts";
import { FoundView } from "./found-view.tsx";
import { useInk } from "./ink.ts";
import { LookFrom } from "./look-from.tsx";
import { notesOnLast } from "./notes.ts";

interface FoundPictureProps {
  readonly desk: Desk;
  readonly seen: SeenLast;
  readonly looking: Looking;
  readonly map: ApartMap | undefined;
}

/** The picture of the first station, with the words that say where to look from and what a hand on it moves. */
export function FoundPicture({ desk, seen, looking, map }: FoundPictureProps): ReactElement {
  const ink = useInk();
  const notes = useMemo(() => notesOnLast(seen), [seen]);
  const { from, hand, lit, change } = looking;
  return (
    <>
      <div className="views">
        <FoundView work={scanWork(desk)} seen={seen} ink={ink} map={map} notes={notes} from={from} hand={hand} lit={lit} onLit={(spot) => change({ lit: spot })} />
      </div>
      <div className="under">
        <LookFrom onLook={(name) => change({ from: { name } })} />
        {seen.last.source === "scan" && (
          <p>
            <span>Your hand moves</span>
            {hands.map((h) => <button key={h} type="button" className="word" aria-pressed={h === hand} onClick={() => change({ hand: h })}>{handWords[h]}</button>)}
          </p>
        )}
      </div>
    </>
  );
}
