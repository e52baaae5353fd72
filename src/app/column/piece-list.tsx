import type { ReactElement } from "react";
import { capital } from "#base/listed.ts";
import type { Strip } from "#pieces/piece.ts";
import { mm, say } from "../state/numbers.ts";
import { byGroup, fromWords, type PieceKind } from "../state/piece-kinds.ts";
import { PieceOutline } from "./piece-outline.tsx";

interface PieceListProps {
  readonly kinds: readonly PieceKind[];
  readonly strips: readonly Strip[];
  readonly chosen: string | undefined;
  /** Those that became others with the last edit. */
  readonly changed: readonly string[];
  readonly onChoose: (name: string | undefined) => void;
}

/** The pieces of a pair by name, as they lie on the bench: group by group, each with its shape. */
export function PieceList({ kinds, strips, chosen, changed, onChoose }: PieceListProps): ReactElement {
  return (
    <section aria-label="The pieces of one pair">
      <h3>The pieces of one pair</h3>
      {byGroup(kinds).map(({ group, kinds: here }) => (
        <div key={group} className="piece-group">
          <p className="follows">{capital(group)}, {here.reduce((n, k) => n + k.count, 0)} to cut</p>
          <ul className="pieces">
            {here.map((k) => (
              <li key={k.name}>
                <button type="button" className={`row piece-row${changed.includes(k.name) ? " changed" : ""}`} aria-pressed={chosen === k.name} onClick={() => onChoose(chosen === k.name ? undefined : k.name)}>
                  <PieceOutline piece={k.shown} />
                  <span><b>{k.name}</b> <span className="one-of">· {k.count}</span>{changed.includes(k.name) && <span className="follows one-of"> changed</span>}</span>
                </button>
              </li>
            ))}
          </ul>
        </div>
      ))}
      {strips.length > 0 && (
        <div className="piece-group">
          <p className="follows">Cut off a roll</p>
          <ul className="strips">{strips.map((s) => <li key={`${s.name}, ${s.where}`}>{s.perPair} × <b>{s.name}</b>, {mm(s.widthMm)} wide and {mm(s.lengthMm, 0)} long, {s.material}: {s.where}</li>)}</ul>
        </div>
      )}
    </section>
  );
}

/** What one piece is, in a line. */
export const kindWords = ({ count, material, areaMm2, perimeterMm, net }: PieceKind): string =>
  `${count} of ${fromWords(material)}${net ? ", without allowances" : ""}, ${say(areaMm2 / 100, 0)}\u00a0cm² each, ${mm(perimeterMm, 0)} round`;
