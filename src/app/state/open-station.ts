import { stations, type Station } from "./stations.ts";

const key = "lastwise open station";

/** The station that was open in this tab before the page was loaded again. */
export function keptStation(): Station | undefined {
  try {
    const kept = sessionStorage.getItem(key);
    return stations.find((s) => s === kept);
  } catch {
    // Where the browser keeps nothing, the page opens as it does at first.
    return undefined;
  }
}

export function keepStation(station: Station): void {
  try {
    sessionStorage.setItem(key, station);
  } catch {
    // Nothing is kept.
  }
}
