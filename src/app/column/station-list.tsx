import { Fragment, type ReactElement, type ReactNode } from "react";
import type { Job } from "#job/job.ts";
import type { Desktop } from "../desktop.ts";
import { stateOf, stations, type Station } from "../state/stations.ts";

interface StationListProps {
  readonly station: Station;
  readonly onStation: (station: Station) => void;
  readonly now: Desktop;
  readonly children: ReactNode;
}

/** The stations as words with a line of state each; the open one holds its sentences. */
export function StationList({ station, onStation, now, children }: StationListProps): ReactElement {
  const { pair } = now;
  const ready = now.sheets !== undefined && now.sheetsOf === pair;
  return (
    <>
      {stations.map((s) => (
        <Fragment key={s}>
          <h2 className="station">
            <button type="button" aria-expanded={s === station} aria-controls="open-station" onClick={() => onStation(s)}>
              <span className="station-name">{s}</span>
              <span className="station-state">{pair ? `${stateOf(s, pair, ready, s === station)}${s === "Last" ? waitsWords(now.waiting) : ""}` : " "}</span>
            </button>
          </h2>
          {s === station && <section id="open-station" className="open-station" aria-label={s}>{children}</section>}
        </Fragment>
      ))}
    </>
  );
}

/** The state is that of the work; what waits beside it is not in it yet. */
function waitsWords(waiting: Job | undefined): string {
  if (!waiting) return "";
  return waiting.last.from === "scan" ? " · a scan waits" : " · photographs wait";
}
