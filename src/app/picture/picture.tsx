import { useMemo, useState, type ReactElement } from "react";
import { severityOf } from "#base/findings.ts";
import type { LastPair, Pair } from "#job/pair.ts";
import type { Point3 } from "#last/last.ts";
import type { Desk } from "../desk.ts";
import { setLines } from "../state/edits.ts";
import type { PagePlan } from "../state/page-plan.ts";
import { pinNumber, type Station } from "../state/stations.ts";
import { CardView } from "./card-view.tsx";
import { drawnLines, type LineKey } from "./drawn-lines.ts";
import type { Pull } from "./grip.tsx";
import { handlesOf } from "./handles.ts";
import { useInk } from "./ink.ts";
import { eyeNames, LastView, type EyeName } from "./last-view.tsx";
import { PiecesView } from "./pieces-view.tsx";
import { SheetsView } from "./sheets-view.tsx";
import type { StretchMap } from "./stretch-map.ts";

const showings = ["both", "the last", "the card"] as const;

interface PictureProps {
  readonly desk: Desk;
  readonly pair: Pair;
  readonly busy: boolean;
  readonly station: Station;
  readonly map: StretchMap | undefined;
  readonly plan: PagePlan | undefined;
  readonly chosen: string | undefined;
  readonly onChoose: (name: string | undefined) => void;
}

/** The one large picture of the open station. */
export function Picture(props: PictureProps): ReactElement {
  const { pair, station, plan, chosen, onChoose } = props;
  if (station === "Sheets") return plan ? <SheetsView plan={plan} paper={pair.job.paper} /> : <></>;
  // A taped pattern has no last to be shown.
  if (station === "Pieces" || pair.from === "tape") return <PiecesView pieces={pair.pieces} chosen={chosen} onChoose={onChoose} />;
  return <LastPicture {...props} pair={pair} />;
}

/** The last and the card, side by side or alone. */
function LastPicture({ desk, pair, busy, station, map }: PictureProps & { readonly pair: LastPair }): ReactElement {
  const ink = useInk();
  const [lit, setLit] = useState<LineKey>();
  const [showing, setShowing] = useState<(typeof showings)[number]>("both");
  const two = station !== "Last";
  // Each kind of station begins from its own side; a choice lasts until the other kind is opened.
  const [picked, pick] = useState<{ readonly two: boolean; readonly from: { readonly name: EyeName } }>();
  const first = useMemo((): { readonly name: EyeName } => ({ name: two ? "above" : "outer side" }), [two]);
  const from = picked?.two === two ? picked.from : first;
  const lines = useMemo(() => drawnLines(pair), [pair]);
  const handles = useMemo(() => (station === "Lines" || station === "Shell" ? handlesOf(pair) : []), [pair, station]);
  const notes = useMemo(() => notesOf(pair), [pair]);
  const words = station === "Last" ? landmarkWords(pair) : notes;
  const onPull: Pull = (values, what, gesture) => desk.change(setLines(desk.job, values), what, gesture);
  const onDone = (): void => desk.settle();

  const withLast = !two || showing !== "the card";
  const withCard = two && showing !== "the last";
  return (
    <>
      <div className={`views${withLast && withCard ? " two" : ""}`}>
        {withLast && (
          <LastView
            pair={pair}
            ink={ink}
            lines={station === "Last" ? lines.filter((l) => l.key === "feather" || l.key === "centre") : lines}
            handles={handles}
            map={map}
            shell={two}
            words={words}
            pinned={station !== "Last"}
            from={from}
            lit={lit}
            onLit={setLit}
            asked={desk.job.lines}
            busy={busy}
            onPull={onPull}
            onDone={onDone}
          />
        )}
        {withCard && <CardView pair={pair} lines={lines} handles={handles} map={map} notes={notes} lit={lit} onLit={setLit} asked={desk.job.lines} busy={busy} onPull={onPull} onDone={onDone} />}
      </div>
      <div className="under">
        {withLast && (
          <p>
            <span>Look from</span>
            {eyeNames.map((name) => <button key={name} type="button" className="word" onClick={() => pick({ two, from: { name } })}>{name}</button>)}
          </p>
        )}
        {two && (
          <p>
            <span>Show</span>
            {showings.map((s) => <button key={s} type="button" className="word" aria-pressed={s === showing} onClick={() => setShowing(s)}>{s}</button>)}
          </p>
        )}
      </div>
    </>
  );
}

/** Findings that speak of a place, as short notes pinned there; on the card at the nearest point of the shell. */
function notesOf({ findings, shell, flat }: LastPair) {
  return findings.flatMap((f, i) => {
    if (!f.at) return [];
    const v = nearestVertex(shell.mesh.positions, f.at);
    const text = `${pinNumber(findings, f)} · ${severityOf(f) === "note" ? "note" : "look here"}`;
    return [{ key: `${f.code} ${i}`, text, at: f.at, onCard: [flat.uv[2 * v]!, flat.uv[2 * v + 1]!] }];
  });
}

function nearestVertex(positions: Float64Array, p: Point3): number {
  let best = 0;
  let least = Infinity;
  for (let i = 0; i < positions.length; i += 3) {
    const d = (positions[i]! - p[0]) ** 2 + (positions[i + 1]! - p[1]) ** 2 + (positions[i + 2]! - p[2]) ** 2;
    if (d < least) [least, best] = [d, i / 3];
  }
  return best;
}

function landmarkWords({ last }: LastPair) {
  const l = last.landmarks;
  return [
    { key: "toe", text: "toe point", at: l.toePoint },
    { key: "seat", text: "seat point", at: l.seatPoint },
    { key: "joint in", text: "joint, inner", at: l.jointMedial },
    { key: "joint out", text: "joint, outer", at: l.jointLateral },
    { key: "vamp", text: "vamp point", at: l.vampPoint },
    { key: "waist", text: "waist", at: l.waistPoint },
    { key: "instep", text: "instep", at: l.instepPoint },
  ];
}
