import { useEffect, useMemo, useRef, useState, useSyncExternalStore, type ReactElement } from "react";
import { severityOf } from "#base/findings.ts";
import type { Job } from "#job/job.ts";
import { Chooser } from "./column/chooser.tsx";
import { FindingsList } from "./column/findings-list.tsx";
import { FoundHere } from "./column/notes.tsx";
import { RefusedHere } from "./column/number-field.tsx";
import { StationLast } from "./column/station-last.tsx";
import { StationLasting, TapedLasting } from "./column/station-lasting.tsx";
import { StationLeather } from "./column/station-leather.tsx";
import { StationLines } from "./column/station-lines.tsx";
import { StationMaking } from "./column/station-making.tsx";
import { StationPieces } from "./column/station-pieces.tsx";
import { StationSheets } from "./column/station-sheets.tsx";
import { StationShell } from "./column/station-shell.tsx";
import { TapedLines, TapedShellWords } from "./column/station-taped.tsx";
import { StationList } from "./column/station-list.tsx";
import type { Desk } from "./desk.ts";
import { useLastingWork } from "./lasting-work.ts";
import type { Lastings } from "./lastings.ts";
import type { LeatherShelf } from "./leather-shelf.ts";
import type { Plans } from "./plans.ts";
import type { Proofs } from "./proofs.ts";
import type { RefusedNumber } from "./desktop.ts";
import { apartMap } from "./picture/apart-map.ts";
import { LastingBusy } from "./picture/lasting-busy.tsx";
import { StepBell } from "./picture/making-timers.tsx";
import { Picture } from "./picture/picture.tsx";
import type { MapOf } from "./picture/strain.ts";
import { shellMap } from "./picture/shell-map.ts";
import { isExample } from "./state/edits.ts";
import type { LeatherSight } from "./state/leather-sight.ts";
import { useLooking } from "./state/looking.ts";
import { useMakingNow } from "./state/making-now.ts";
import { useMakingSight } from "./state/making-sight.ts";
import { usePieceWork } from "./state/piece-work.ts";
import { keepStation, keptStation } from "./state/open-station.ts";
import { seenLast } from "./state/scan-work.ts";
import { spotOf, stationOf } from "./state/spots.ts";
import type { Spot } from "./state/spot.ts";
import { refusedNumbers } from "./state/refused-numbers.ts";
import { findingsAt, type Station } from "./state/stations.ts";
import { BusyLine, NothingYet, TroubleLine, UnusedLine } from "./top/lines.tsx";
import { Top } from "./top/top.tsx";
import { useKeysAndDrops } from "./top/keys-and-drops.ts";
import type { Usuals } from "./usuals.ts";
import type { Workshop } from "./workshop.ts";

interface AppProps {
  readonly desk: Desk;
  readonly proofs: Proofs;
  readonly lastings: Lastings;
  readonly plans: Plans;
  readonly usuals: Usuals;
  readonly shelf: LeatherShelf;
  readonly workshop: Workshop;
}

/** The whole page: one line of state at the top, one column of sentences, one picture. */
export function App({ desk, proofs, lastings, plans, usuals, shelf, workshop }: AppProps): ReactElement {
  const now = useSyncExternalStore(desk.listen, desk.look);
  // The maker's own work opens where it is drawn, the example where her own last comes in.
  const [picked, setStation] = useState<Station | undefined>(keptStation);
  const [first, setFirst] = useState<Station>();
  if (now.looked && !first) setFirst(isExample(desk.job) ? "Last" : "Lines");
  // What was brought in is looked at first.
  const [seen, setSeen] = useState<Job>();
  if (now.brought && now.brought !== seen) {
    setSeen(now.brought);
    setStation("Last");
  }
  const station = picked ?? first ?? "Last";
  useEffect(() => {
    if (picked) keepStation(picked);
  }, [picked]);
  const looking = useLooking();
  const [mapOf, setMapOf] = useState<MapOf>("give");
  const [folded, setFolded] = useState(false);
  const [sight, setSight] = useState<LeatherSight>("upper");
  const dropping = useKeysAndDrops(desk, station !== "Leather" ? undefined : sight === "lining" ? "lining" : "upper", station === "Making");
  const chooser = useRef<HTMLInputElement>(null);
  const pictures = useRef<HTMLInputElement>(null);
  const { pair, rules, refused, unused, standing } = now;
  const work = usePieceWork(pair, now.draft);
  const refusals = useMemo(() => refusedNumbers(refused, unused, standing), [refused, unused, standing]);
  const laidOut = pair !== undefined || now.stuck;
  // A number that keeps the work from being shown is to be found at once.
  const [shownAt, setShownAt] = useState<RefusedNumber>();
  if (now.stuck && refused && refused !== shownAt) {
    setShownAt(refused);
    setStation(stationOf(refused.spot));
  }
  const onLast = pair?.from === "last" ? pair : undefined;
  const taped = pair?.from === "tape" ? pair : undefined;
  const apart = useMemo(() => (onLast?.other && !now.waiting && station === "Last" ? apartMap(onLast.last, onLast.other.comparison.distances) : undefined), [onLast, now.waiting, station]);
  const proven = useSyncExternalStore(proofs.listen, proofs.look);
  const proof = onLast && station === "Shell" && proven.job === onLast.job ? proven.proof : undefined;
  const map = useMemo(() => (onLast && station === "Shell" ? shellMap(onLast, proof, mapOf) : undefined), [onLast, station, proof, mapOf]);
  const toProve = station === "Shell" && !now.draft && !now.busy ? onLast?.job : undefined;
  useEffect(() => {
    if (toProve) proofs.ask(toProve);
  }, [proofs, toProve]);
  const lasting = useLastingWork(lastings, onLast, station === "Lasting");
  const planned = useSyncExternalStore(plans.listen, plans.look);
  const toPlan = station === "Sheets" && !now.draft ? pair : undefined;
  useEffect(() => {
    if (toPlan) plans.ask(toPlan);
  }, [plans, toPlan]);
  const plan = station === "Sheets" && pair ? planned.plan : undefined;
  const planning = toPlan !== undefined && toPlan !== planned.pair;

  const making = useMakingNow(pair, now.draft, desk.job.making);
  const makingSight = useMakingSight();

  const toStation = (s: Station): void => {
    setStation(s);
    work.onChoose(undefined);
  };
  const open = (): void => chooser.current?.click();
  // A scan that waits is spoken of at the first station in place of the work.
  const ofWork = [...(pair?.findings ?? []), ...(making?.findings ?? [])];
  const findings = (station === "Last" ? seenLast(desk)?.findings : undefined) ?? ofWork;
  const here = findingsAt(station, findings);
  const toCut = [...findings, ...lasting.found];
  // What no number on the page answers for stands below the sentences, the gravest first; nothing above them moves.
  const rest = here.filter((f) => !answered(spotOf(f, rules), station)).sort((a, b) => Number(severityOf(a) === "note") - Number(severityOf(b) === "note"));
  const inside = laidOut && (
    <FoundHere value={{ here, all: findings, rules }}>
      <RefusedHere value={refusals}>
      {station === "Last" && <StationLast desk={desk} pair={pair} onOpen={open} onPictures={() => pictures.current?.click()} looking={looking} map={apart} rest={rest} usuals={usuals} />}
      {station === "Lines" && rules?.line && <StationLines desk={desk} rules={rules.line} pair={onLast} />}
      {station === "Lines" && taped && <TapedLines pair={taped} />}
      {station === "Shell" && taped && <TapedShellWords pair={taped} />}
      {station === "Shell" && !taped && rules && <StationShell onStation={toStation} desk={desk} rules={rules} pair={onLast} map={map} mapOf={mapOf} onMap={setMapOf} folded={folded} onFolded={setFolded} proofs={proofs} proven={proven} />}
      {station === "Leather" && <StationLeather desk={desk} shelf={shelf} taped={taped !== undefined} onSight={setSight} />}
      {station === "Lasting" && taped && <TapedLasting onStation={toStation} />}
      {station === "Lasting" && onLast && <StationLasting desk={desk} pair={onLast} work={lasting} onStation={toStation} />}
      {station === "Pieces" && rules && <StationPieces desk={desk} rules={rules} pair={pair} findings={toCut} work={work} usuals={usuals} onStation={toStation} />}
      {station === "Making" && making && <StationMaking desk={desk} workshop={workshop} making={making} />}
      {station === "Sheets" && pair && plan && <StationSheets desk={desk} now={now} pair={pair} findings={toCut} plan={plan} onStation={toStation} />}
      {station === "Sheets" && pair && !plan && <p className="follows">Laying the pieces on pages …</p>}
      {!pair && waits(station, rules !== undefined) && <p className="follows">{waits(station, rules !== undefined)}</p>}
      {station !== "Last" && station !== "Leather" && <FindingsList findings={station === "Pieces" ? rest.filter((f) => severityOf(f) === "note") : rest} all={pair?.findings ?? []} />}
      </RefusedHere>
    </FoundHere>
  );
  return (
    <div className={`bench${dropping ? " dropping" : ""}`}>
      <Top desk={desk} now={now} onOpen={open} />
      <Chooser at={chooser} label="file to open" accept=".stl,.obj,.ply,.glb,.3mf,.off,.jpg,.jpeg,.png,.lastwise,.json" onFiles={(files) => void desk.openFiles(files)} />
      <Chooser at={pictures} label="pictures to open" accept="image/jpeg,image/png" onFiles={(files) => void desk.openFiles(files)} />
      <nav className="column" aria-label="Stations of the work" inert={now.busy?.trial === true}>
        <StationList station={station} onStation={toStation} now={now} pulled={lasting.found} making={making}>{inside}</StationList>
      </nav>
      <main className="picture">
        <div className="trouble">
          <TroubleLine desk={desk} now={now} station={station} />
          <UnusedLine desk={desk} now={now} />
        </div>
        {pair ? <Picture desk={desk} pair={pair} busy={now.busy !== undefined} station={station} looking={looking} map={map} proof={proof} folded={folded && station === "Shell"} apart={looking.mapped ? apart : undefined} plan={plan} work={work} sight={sight} onSight={setSight} lasting={lasting} making={making} makingSight={makingSight} /> : <NothingYet desk={desk} now={now} />}
        {station === "Lasting" && <LastingBusy work={lasting} />}
        <BusyLine desk={desk} now={now} planning={planning} />
      </main>
      {making && <StepBell desk={desk} making={making} />}
      {dropping && <p className="drop-here">Let go to open the file</p>}
    </div>
  );
}

/** A number of this station has the note under its own sentence. */
const answered = (spot: Spot | undefined, station: Station): boolean => spot !== undefined && stationOf(spot) === station;

/** What a station waits for while no pair can be made; nothing where its numbers stand to be corrected. */
function waits(station: Station, ruled: boolean): string | undefined {
  if (station === "Lasting") return "Lasting waits until there is a pattern to pull over.";
  if (station === "Making") return "What making it takes waits until the pair can be worked out.";
  if (station === "Sheets") return "The sheets wait until the pair can be worked out again.";
  if ((station === "Lines" || station === "Shell" || station === "Pieces") && !ruled) return "These numbers wait until there is a last to draw on.";
  return undefined;
}
