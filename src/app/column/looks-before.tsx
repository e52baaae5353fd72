import type { ReactElement } from "react";
import type { Finding } from "#base/findings.ts";
import { capital, listed } from "#base/listed.ts";
import { findingsAt, looksAmong, looksWords, stations, type Station } from "../state/stations.ts";

interface LooksBeforeProps {
  readonly findings: readonly Finding[];
  /** The station that is open: what it tells stands there itself. */
  readonly but: Station;
  readonly onStation: (station: Station) => void;
}

/** How many things are to be looked at before anything is cut, with a way to each station that tells them. */
export function LooksBefore({ findings, but, onStation }: LooksBeforeProps): ReactElement | null {
  const at = stations.map((station) => ({ station, n: looksAmong(findingsAt(station, findings)).length })).filter(({ n, station }) => n > 0 && station !== but && station !== "Sheets" && station !== "Making");
  const all = at.reduce((sum, { n }) => sum + n, 0);
  if (all === 0) return null;
  const words = looksWords(all);
  return (
    <p className="sentence looks-before" role="status">
      <b>{capital(words)} to look at before you cut</b>, at {listed(at.map(({ station }) => station))}:{" "}
      {at.map(({ station, n }, i) => (
        <span key={station}>{i > 0 && ", "}<button type="button" className="word" onClick={() => onStation(station)}>{n === 1 ? "look at it" : "look at them"}{at.length > 1 && ` at ${station}`}</button></span>
      ))}.
    </p>
  );
}
