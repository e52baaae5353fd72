import { useRef, useSyncExternalStore, type ReactElement } from "react";
import type { UpperLayer } from "#leather/leather.ts";
import { knownWords } from "#leather/strip-words.ts";
import { usualLeather } from "#leather/leather-from.ts";
import type { Desk } from "../desk.ts";
import { downloadBytes } from "../download.ts";
import type { LeatherShelf } from "../leather-shelf.ts";
import { isKept, leatherToKeep, withKept, writeLeathers, type KeptLeather } from "../state/kept-leathers.ts";
import { layerWords } from "../state/leather-words.ts";
import { mm } from "../state/numbers.ts";
import { Chooser } from "./chooser.tsx";
import { Fold } from "./fold.tsx";

interface LeatherKeptProps {
  readonly desk: Desk;
  readonly layer: UpperLayer;
  readonly shelf: LeatherShelf;
}

/** The leathers that are kept for other pairs: this one to be kept, others to be taken. */
export function LeatherKept({ desk, layer, shelf }: LeatherKeptProps): ReactElement {
  const { leathers, said, former } = useSyncExternalStore(shelf.listen, shelf.look);
  const chooser = useRef<HTMLInputElement>(null);
  const { job } = desk;
  const of = layerWords[layer];
  const own = leatherToKeep(job, layer), kept = leathers.find(({ name }) => name === own?.name);
  const same = kept !== undefined && isKept(job, layer, kept);
  const keep = kept ? `Keep ${kept.name} as it is now` : "Keep this leather for other pairs";
  return (
    <Fold name="Leathers you keep" holds={leathers.length === 0 ? "none yet" : `${leathers.length === 1 ? "one" : leathers.length}${same ? "; this is one of them" : ""}`}>
      {!own && <p className="follows">Give this leather a name above, and you can keep it for other pairs with its strips and what its shoes taught.</p>}
      {own && same && <p className="follows">{own.name} is kept as it is here.</p>}
      {own && !same && (
        <p className="sentence">
          <button type="button" className="word" aria-label={`${keep}, the ${of}’s`} onClick={() => void shelf.keep(own)}>{keep}</button>
          {kept ? ": what is kept of it is other than here." : ": its thickness, its strips and what its shoes taught."}
        </p>
      )}
      {leathers.length > 0 && (
        <ul className="kept" aria-label={`leathers to take for the ${of}`}>
          {leathers.map((k) => (
            <li key={k.name}>
              <button type="button" className="word" aria-label={`${k.name}, to take for the ${of}`} disabled={isKept(job, layer, k)} onClick={() => desk.change(withKept(job, layer, k), `taking ${k.name} for the ${of}`)}>{k.name}</button>{" "}
              <span className="follows">{keptWords(k, layer)}</span>{" "}
              <button type="button" className="word why" aria-label={`forget ${k.name}, at the ${of}`} onClick={() => void shelf.forget(k.name)}>forget</button>
            </li>
          ))}
        </ul>
      )}
      <p className="acts-here">
        {leathers.length > 0 && <button type="button" className="word" aria-label={`Save them to a file: the leathers, at the ${of}`} onClick={() => downloadBytes("my-leathers.json", new TextEncoder().encode(writeLeathers(leathers)), "application/json")}>Save them to a file</button>}
        <button type="button" className="word" aria-label={`Read them from a file: leathers, at the ${of}`} onClick={() => chooser.current?.click()}>Read them from a file</button>
      </p>
      <p className="follows" role="status">
        {said}{" "}
        {former && <button type="button" className="word" aria-label={`Have it back: ${former.name}, at the ${of}`} onClick={() => void shelf.takeBack()}>Have it back</button>}
      </p>
      <Chooser at={chooser} label={`file of leathers, at the ${of}`} accept=".json,application/json" onFiles={([file]) => file && void shelf.readFrom(file)} />
    </Fold>
  );
}

/** What is kept of one: "goat or kid, 0.85 mm, 3 strips, 2 pairs made of it". */
function keptWords({ said, shoes }: KeptLeather, layer: UpperLayer): string {
  const strips = said.strips?.length ?? 0, pairs = new Set(shoes.map(({ pair }) => pair)).size;
  return [
    knownWords[said.known ?? usualLeather[layer]],
    said.thicknessMm !== undefined && mm(said.thicknessMm, 2),
    strips > 0 && (strips === 1 ? "one strip" : `${strips} strips`),
    pairs > 0 && (pairs === 1 ? "one pair made of it" : `${pairs} pairs made of it`),
  ].filter((w) => w !== false).join(", ");
}
