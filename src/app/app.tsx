import { useMemo, useRef, useState, useSyncExternalStore, type ReactElement } from "react";
import { severityOf } from "#base/findings.ts";
import { FindingsList } from "./column/findings-list.tsx";
import { StationLast } from "./column/station-last.tsx";
import { StationLines } from "./column/station-lines.tsx";
import { StationPieces } from "./column/station-pieces.tsx";
import { StationSheets } from "./column/station-sheets.tsx";
import { StationShell } from "./column/station-shell.tsx";
import { StationList } from "./column/station-list.tsx";
import type { Desk } from "./desk.ts";
import { Picture } from "./picture/picture.tsx";
import type { MapOf } from "./picture/strain.ts";
import { stretchMap } from "./picture/stretch-map.ts";
import { pagePlan } from "./state/page-plan.ts";
import { findingsAt, type Station } from "./state/stations.ts";
import { BusyLine, NothingYet, TroubleLine } from "./top/lines.tsx";
import { Top } from "./top/top.tsx";
import { useKeysAndDrops } from "./top/keys-and-drops.ts";

/** The whole page: one line of state at the top, one column of sentences, one picture. */
export function App({ desk }: { readonly desk: Desk }): ReactElement {
  const now = useSyncExternalStore(desk.listen, desk.look);
  const [station, setStation] = useState<Station>("Lines");
  const [mapOf, setMapOf] = useState<MapOf>("give");
  const [chosen, setChosen] = useState<string>();
  const chooser = useRef<HTMLInputElement>(null);
  const dropping = useKeysAndDrops(desk);
  const { pair } = now;
  const map = useMemo(() => (pair && station === "Shell" ? stretchMap(pair, mapOf) : undefined), [pair, station, mapOf]);
  const plan = useMemo(() => (pair && station === "Sheets" ? pagePlan(pair) : undefined), [pair, station]);

  const toStation = (s: Station): void => {
    setStation(s);
    setChosen(undefined);
  };
  const open = (): void => chooser.current?.click();
  const found = pair ? findingsAt(station, pair.findings) : [];
  const inside = pair && (
    <>
      <FindingsList findings={found.filter((f) => severityOf(f) !== "note")} all={pair.findings} />
      {station === "Last" && <StationLast desk={desk} pair={pair} onOpen={open} />}
      {station === "Lines" && <StationLines desk={desk} pair={pair} />}
      {station === "Shell" && map && <StationShell desk={desk} pair={pair} map={map} onMap={setMapOf} />}
      {station === "Pieces" && <StationPieces desk={desk} pair={pair} chosen={chosen} onChoose={setChosen} />}
      {station === "Sheets" && plan && <StationSheets desk={desk} now={now} pair={pair} plan={plan} />}
      <FindingsList findings={found.filter((f) => severityOf(f) === "note")} all={pair.findings} />
    </>
  );
  return (
    <div className={`bench${dropping ? " dropping" : ""}`}>
      <Top desk={desk} now={now} onOpen={open} />
      <input ref={chooser} type="file" className="away" tabIndex={-1} aria-label="file to open" accept=".stl,.obj,.ply,.glb,.lastwise,.json" onChange={(e) => {
        const file = e.target.files?.[0];
        e.target.value = "";
        if (file) void desk.openFile(file);
      }} />
      <nav className="column" aria-label="Stations of the work" inert={now.busy?.trial === true}>
        <StationList station={station} onStation={toStation} now={now}>{inside}</StationList>
      </nav>
      <main className="picture">
        <TroubleLine desk={desk} now={now} />
        {pair ? <Picture desk={desk} pair={pair} busy={now.busy !== undefined} station={station} map={map} plan={plan} chosen={chosen} onChoose={setChosen} /> : <NothingYet desk={desk} now={now} />}
        <BusyLine desk={desk} now={now} />
      </main>
      {dropping && <p className="drop-here">Let go to open the file</p>}
    </div>
  );
}
