import type { ReactElement } from "react";
import type { LastPair } from "#job/pair.ts";
import { askedFrom } from "#lasting/log.ts";
import { overByName, overUpperOf } from "#lasting/over-upper.ts";
import type { Desk } from "../desk.ts";
import type { LastingWork } from "../lasting-work.ts";
import { endsAsked } from "../state/ends-asked.ts";
import type { Station } from "../state/stations.ts";
import { Fold } from "./fold.tsx";
import { LastingAsks } from "./lasting-asks.tsx";
import { LastingColours } from "./lasting-colours.tsx";
import { LastingCorrect } from "./lasting-correct.tsx";
import { LastingDrafts } from "./lasting-drafts.tsx";
import { LastingEnds } from "./lasting-ends.tsx";
import { LastingFound } from "./lasting-found.tsx";
import { LastingGauges } from "./lasting-gauges.tsx";
import { LastingPulls } from "./lasting-pulls.tsx";
import { LastingRun } from "./lasting-run.tsx";
import { ShoeLog } from "./shoe-log.tsx";

interface StationLastingProps {
  readonly desk: Desk;
  readonly pair: LastPair;
  readonly work: LastingWork;
  readonly onStation: (station: Station) => void;
}

/** How the upper is pulled over the last, where it then ends, and what came of it on the bench. */
export function StationLasting({ desk, pair, work, onStation }: StationLastingProps): ReactElement {
  const { lastings, now, holds, map, onMap } = work;
  const { lasted, banding } = now;
  const foretold = holds && lasted ? { lasted, ...(banding && { banded: banding.banded }) } : undefined;
  const made = {
    last: pair.last.name,
    leather: pair.leathers.upper.name,
    asked: lasted && holds ? askedFrom(lasted.asked) : endsAsked(pair.lines),
    overMm: overByName(overUpperOf(pair.beneath)),
    ...(holds && now.throat && { foretold: now.throat }),
  };
  return (
    <>
      <p className="safety">Forces, heat and wetting are your judgement: what is foretold here is reckoned, and nothing replaces a maker’s eye and a trial on scrap.</p>
      <LastingRun pair={pair} lastings={lastings} now={now} holds={holds} />
      {lasted && (
        <div className={holds ? undefined : "former"}>
          <LastingEnds asked={lasted.asked} ends={lasted.ends} banded={banding?.banded} />
          <LastingFound findings={lasted.findings} />
        </div>
      )}
      <LastingPulls desk={desk} />
      <LastingCorrect desk={desk} pair={pair} work={work} onLines={() => onStation("Lines")} />
      {lasted && map && (
        <div className={holds ? undefined : "former"}>
          <LastingColours pair={pair} map={map} onMap={onMap} />
          <LastingDrafts drafts={lasted.drafts} own={now.job?.lasting ?? {}} />
          {holds && <LastingAsks pair={pair} lastings={lastings} now={now} />}
        </div>
      )}
      <Fold name="Marks for both lasts" holds="as tape lengths"><LastingGauges pair={pair} foretold={foretold} /></Fold>
      <ShoeLog desk={desk} pair={pair} made={made} work={work} />
    </>
  );
}

/** There is no last to pull the upper over. */
export function TapedLasting({ onStation }: { readonly onStation: (station: Station) => void }): ReactElement {
  return (
    <>
      <p className="sentence">This is a taped pattern: there is no last here to pull the upper over, so nothing can be foretold of throat, back and sides.</p>
      <p className="follows">What you know of the leathers is told at the station <button type="button" className="word" onClick={() => onStation("Leather")}>Leather</button>. To have the upper pulled over, bring the last in by a scan or by measures, at the station <button type="button" className="word" onClick={() => onStation("Last")}>Last</button>.</p>
    </>
  );
}
