import { useContext, useLayoutEffect, useRef, type ReactElement, type RefObject } from "react";
import { capital } from "#base/listed.ts";
import type { Finding } from "#base/findings.ts";
import type { RefusedNumber } from "../desktop.ts";
import { spotOf, stationOf, tell } from "../state/spots.ts";
import type { Spot } from "../state/spot.ts";
import { looksAmong, looksWords, stationOfFinding, type Station } from "../state/stations.ts";
import { FindingsList } from "./findings-list.tsx";
import { goToSpot } from "./go-to-spot.ts";
import { LooksBefore } from "./looks-before.tsx";
import { FoundHere } from "./notes.tsx";
import { RefusedHere } from "./number-field.tsx";

/**
 * What has to be looked at, right under the station's head: a line that always stands there, and under it each thing in its first
 * words, which lead to the sentence where it is told in full; what no sentence answers for is told here. What other stations tell is
 * counted, with a way there: it is cut from these pieces too.
 */
export function PieceLooks({ findings, onStation }: { readonly findings: readonly Finding[]; readonly onStation: (station: Station) => void }): ReactElement {
  const { here, all, rules } = useContext(FoundHere);
  const refused = useContext(RefusedHere).filter((r) => stationOf(r.spot) === "Pieces");
  const looks = looksAmong(here);
  const elsewhere = looksAmong(findings).some((f) => !["Pieces", "Making", "Sheets"].includes(stationOfFinding(f)));
  const at = (spot: Spot | undefined): Spot | undefined => (spot && stationOf(spot) === "Pieces" ? spot : undefined);
  const answered = looks.flatMap((f) => {
    const spot = at(spotOf(f, rules));
    return spot ? [{ spot, words: firstWords(tell(f)) }] : [];
  });
  const rest = looks.filter((f) => !at(spotOf(f, rules)));
  const block = useSteady();
  return (
    <section ref={block} className="piece-looks" aria-label="To look at before you cut">
      <p className="follows" role="status">{looks.length === 0 ? `Nothing to look at ${elsewhere ? "among the pieces" : "before you cut"}.` : <b>{capital(looksWords(looks.length))} to look at before you cut.</b>}</p>
      {refused.length + answered.length > 0 && (
        <ul className="looks">
          {refused.map((r) => <li key={r.spot}><button type="button" className="word" onClick={() => goToSpot(r.spot)}>{notUsed(r)}</button></li>)}
          {answered.map(({ spot, words }, i) => <li key={`${spot} ${i}`}><button type="button" className="word" onClick={() => goToSpot(spot)}>{words}</button></li>)}
        </ul>
      )}
      <FindingsList findings={rest} all={all} />
      <LooksBefore findings={findings} but="Pieces" onStation={onStation} />
    </section>
  );
}

const notUsed = ({ text, sentence }: RefusedNumber): string => (text === undefined ? firstWords(sentence) : `Not used: ${text}. ${firstWords(sentence)}`);

/** The first sentence, or what stands before its colon. */
const firstWords = (told: string): string => /^.*?[.:;](?=\s|$)/.exec(told)?.[0].replace(/[:;]$/, ".") ?? told;

/**
 * When the block grows, what stands below stays where it is in the window, for the hand may be on it. A browser sees to that by itself
 * only in a column that is already scrolled.
 */
function useSteady(): RefObject<HTMLElement | null> {
  const block = useRef<HTMLElement>(null);
  const before = useRef<number>(undefined);
  useLayoutEffect(() => {
    const high = block.current?.offsetHeight;
    const column = block.current?.closest<HTMLElement>(".open-station");
    const held = document.activeElement;
    if (high !== undefined && before.current !== undefined && high !== before.current && column?.scrollTop === 0 && held && held !== column && column.contains(held) && !block.current!.contains(held)) column.scrollTop += high - before.current;
    before.current = high;
  });
  return block;
}
