import { Fragment, type ReactElement, type ReactNode } from "react";
import type { Finding } from "#base/findings.ts";
import type { Job } from "#job/job.ts";
import type { Making } from "#making/making.ts";
import type { Desktop } from "../desktop.ts";
import { lookOf, stations, whatOf, type Station } from "../state/stations.ts";

interface StationListProps {
  readonly station: Station;
  readonly onStation: (station: Station) => void;
  readonly now: Desktop;
  /** What was found when the upper was pulled over, as the work stands now. */
  readonly pulled: readonly Finding[];
  /** What making takes, as it stands now. */
  readonly making: Making | undefined;
  readonly children: ReactNode;
}

/** The stations as words with a line of state each; the open one holds its sentences. */
export function StationList({ station, onStation, now, pulled, making, children }: StationListProps): ReactElement {
  const { pair } = now;
  const ready = now.sheets !== undefined && now.sheetsOf === pair;
  return (
    <>
      {stations.map((s) => (
        <Fragment key={s}>
          <h2 className="station">
            <button type="button" aria-expanded={s === station} aria-controls="open-station" onClick={() => onStation(s)}>
              <span className="station-name">{s}</span>
              <StateLine what={pair ? `${whatOf(s, pair, making, ready)}${s === "Last" ? waitsWords(now.waiting) : ""}` : " "} look={pair && s !== station ? lookOf(s, [...pair.findings, ...pulled, ...(making?.findings ?? [])]) : undefined} />
            </button>
          </h2>
          {s === station && <section id="open-station" className="open-station" aria-label={s}>{children}</section>}
        </Fragment>
      ))}
    </>
  );
}

/**
 * How a station stands. The open one leaves the count out: its notes stand under its sentences, and a line that grows would push the
 * field being edited from under the hand. Where there is no room, only what has to be looked at stays.
 */
function StateLine({ what, look }: { readonly what: string; readonly look: string | undefined }): ReactElement {
  return <span className="station-state"><span className="station-what">{what}{look && " · "}</span>{look}</span>;
}

/** The state is that of the work; what waits beside it is not in it yet. */
function waitsWords(waiting: Job | undefined): string {
  if (!waiting) return "";
  return waiting.last.from === "scan" ? " · a scan waits" : " · photographs wait";
}
