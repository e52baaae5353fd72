import type { ReactElement } from "react";
import type { LastPair } from "#job/pair.ts";
import type { Rules } from "#job/run-options.ts";
import type { Desk } from "../desk.ts";
import type { Proofs, Proven } from "../proofs.ts";
import type { MapOf } from "../picture/strain.ts";
import type { ShellMap } from "../picture/shell-map.ts";
import type { Station } from "../state/stations.ts";
import { usualParts, type UpperCut } from "#pieces/choices.ts";
import { cutWords } from "../state/piece-choices.ts";
import { stageWords } from "../state/stage-words.ts";
import { ShellBeneath } from "./shell-beneath.tsx";
import { ShellCheck } from "./shell-check.tsx";
import { ShellHalves } from "./shell-halves.tsx";
import { ShellRelief } from "./shell-relief.tsx";
import { ShellColours } from "./shell-colours.tsx";
import { ShellTopline } from "./shell-topline.tsx";

interface StationShellProps {
  readonly onStation: (station: Station) => void;
  readonly desk: Desk;
  readonly rules: Rules;
  /** Both nothing while no pair can be made. */
  readonly pair: LastPair | undefined;
  readonly map: ShellMap | undefined;
  readonly mapOf: MapOf;
  readonly onMap: (of: MapOf) => void;
  readonly folded: boolean;
  readonly onFolded: (folded: boolean) => void;
  readonly proofs: Proofs;
  readonly proven: Proven;
}

/** The upper between last and flat card: its topline, what lies beneath it, and what the flat piece asks of the leather. */
export function StationShell({ onStation, desk, rules, pair, map, mapOf, onMap, folded, onFolded, proofs, proven }: StationShellProps): ReactElement {
  const { shell } = rules;
  const { busy, trouble } = proven;
  const isNow = pair !== undefined && proven.job === pair.job;
  // Before the last change it still tells something, on another last nothing.
  const proof = pair && proven.job?.last === pair.job.last ? proven.proof : undefined;
  return (
    <>
      {shell && <ShellTopline desk={desk} rules={shell} pair={pair} />}
      {pair && <WholeCard cut={pair.job.parts.cut ?? usualParts.cut} onStation={onStation} />}
      {pair && <ShellColours pair={pair} map={map} of={mapOf} onMap={onMap} />}
      {shell && <ShellBeneath desk={desk} rules={{ ...rules, shell }} pair={pair} />}
      {shell && <ShellHalves desk={desk} proof={isNow ? proof : undefined} folded={folded} onFolded={onFolded} />}
      {pair && busy && <Trying busy={busy} proofs={proofs} first={proof === undefined} />}
      {pair && !busy && !isNow && <p className="follows"><button type="button" className="word" onClick={() => proofs.ask(pair.job)}>Try the pattern out</button></p>}
      {trouble && <p className="why-wrong">{trouble}</p>}
      {pair && proof && <div className={isNow ? undefined : "former"}><ShellCheck proof={proof} /><ShellRelief proof={proof} /></div>}
    </>
  );
}

/** The card here is the same for every cut. */
function WholeCard({ cut, onStation }: { readonly cut: UpperCut; readonly onStation: (station: Station) => void }): ReactElement | null {
  if (cut === "back-seam") return null;
  return <p className="follows">The card is shown whole here, open at the back; the upper is cut {cutWords[cut]}, as it stands at the station <button type="button" className="word" onClick={() => onStation("Pieces")}>Pieces</button>.</p>;
}

/** That the pattern is being tried out, and how far; what was found before stays below meanwhile. */
function Trying({ busy, proofs, first }: { readonly busy: NonNullable<Proven["busy"]>; readonly proofs: Proofs; readonly first: boolean }): ReactElement {
  return (
    <p className="follows" role="status">
      {stageWords({ on: "pair", trial: false, stage: busy.stage })} … <progress max={1} value={busy.fraction} aria-label="how far the pattern is tried out" />{" "}
      <button type="button" className="word" onClick={() => proofs.stop()}>Stop</button>
      {!first && " What stands below is from before the last change."}
    </p>
  );
}
