import { useContext, useEffect, useRef, type ReactElement } from "react";
import { capital } from "#base/listed.ts";
import type { Finding } from "#base/findings.ts";
import type { Pair } from "#job/pair.ts";
import type { Rules } from "#job/run-options.ts";
import type { PieceSettings } from "#pieces/settings.ts";
import type { Desk } from "../desk.ts";
import { kindGroups, kindsOf } from "../state/piece-kinds.ts";
import type { PieceWork } from "../state/piece-work.ts";
import { pieceGroups } from "../state/piece-group.ts";
import { keysOf, ofPiece, sentencesFor } from "../state/piece-sentences.ts";
import { spotOf, spotsOf } from "../state/spots.ts";
import { speaksOfPiece } from "../state/piece-spots.ts";
import type { Station } from "../state/stations.ts";
import { pieceApartWords } from "../state/variant.ts";
import type { Usuals } from "../usuals.ts";
import { Fold } from "./fold.tsx";
import { FindingsList } from "./findings-list.tsx";
import { FoundHere } from "./notes.tsx";
import { RefusedHere } from "./number-field.tsx";
import { chosenOf, PieceChoices } from "./piece-choices.tsx";
import { PieceCompare } from "./piece-compare.tsx";
import { FollowedHere } from "./piece-follows.tsx";
import { kindWords, PieceList } from "./piece-list.tsx";
import { PieceLooks } from "./piece-looks.tsx";
import { Sentence, spotsIn } from "./piece-sentence.tsx";
import { PuffOfShell, SkivingOfShell, StiffenerOfShell } from "./piece-shell-words.tsx";
import { PieceUsual } from "./piece-usual.tsx";

interface StationPiecesProps {
  readonly desk: Desk;
  readonly rules: Rules;
  /** Nothing while no pair can be made. */
  readonly pair: Pair | undefined;
  /** Of all stations, with what a pull-over that still holds came to. */
  readonly findings: readonly Finding[];
  readonly work: PieceWork;
  readonly usuals: Usuals;
  readonly onStation: (station: Station) => void;
}

/** Of what parts the shoe is made, the pieces by name, and their numbers: those of the piece that is picked first, the others by group. */
export function StationPieces({ desk, rules, pair, findings, work, usuals, onStation }: StationPiecesProps): ReactElement {
  const { chosen, onChoose, followed, compared } = work;
  const kinds = pair ? kindsOf(pair.pieces) : [];
  const kind = kinds.find((k) => k.name === chosen);
  const refused = useContext(RefusedHere);
  const { here, all } = useContext(FoundHere);
  const needed = [...refused.map((r) => r.spot), ...here.map((f) => spotOf(f, rules))].flatMap((spot) => (spot?.startsWith("pieces ") ? [spot.slice("pieces ".length)] : []));
  // A taped pattern may lack bottom and heel: their numbers would change nothing.
  const idle = new Set<string>(pair?.from === "tape" ? kindGroups.filter((g) => (g === "bottom" || g === "heel") && kinds.every((k) => k.group !== g)) : []);
  const bottomCut = !idle.has("bottom");
  const allSentences = sentencesFor(chosenOf(desk), Object.keys(rules.piece), (key) => rules.piece[key as keyof PieceSettings].name, new Set(needed));
  const sentences = allSentences.filter((s) => !idle.has(s.group) || keysOf(s).some((key) => needed.includes(key)));
  const { own, rest } = ofPiece(sentences, kind);
  // What speaks of the picked piece and is told by none of its own sentences.
  const told = new Set<string>(own.flatMap(spotsIn));
  const ofIt = kind ? here.filter((f) => speaksOfPiece(f, kind.name) && !spotsOf(f, rules).some((spot) => told.has(spot) || spot.startsWith("shell "))) : [];
  const apart = kind && compared?.pieces.find((p) => p.name === kind.name);
  const top = useRef<HTMLDivElement>(null);
  useEffect(() => {
    if (chosen) top.current?.scrollIntoView({ block: "start" });
  }, [chosen]);
  return (
    <FollowedHere value={followed}>
      <PieceLooks findings={findings} onStation={onStation} />
      <div ref={top}>
        {kind && (
          <section className="picked" aria-label={`The ${kind.name}`}>
            <h3>The {kind.name}</h3>
            <p className="follows">{kindWords(kind)}.{apart && ` ${pieceApartWords(apart, kind)}`} <button type="button" className="word" onClick={() => onChoose(undefined)}>Show all pieces</button></p>
            <FindingsList findings={ofIt} all={all} />
            {own.map((s) => <Sentence key={s.name} desk={desk} rules={rules} sentence={s} />)}
            {rules.shell && kind.name === "stiffener" && <StiffenerOfShell desk={desk} rules={rules.shell} />}
            {rules.shell && kind.name === "toe puff" && <PuffOfShell desk={desk} rules={rules.shell} />}
            {rules.shell && /^(stiffener|toe puff)$/.test(kind.name) && <SkivingOfShell desk={desk} rules={rules.shell} />}
            {own.length === 0 && <p className="follows">It follows from the shell alone; no number of its own changes it.</p>}
          </section>
        )}
      </div>
      <PieceChoices desk={desk} bottomCut={bottomCut} onStation={onStation} />
      {pair && <PieceList kinds={kinds} strips={pair.strips} chosen={kind?.name} changed={[...(followed?.changed ?? []), ...(followed?.come ?? [])]} onChoose={onChoose} />}
      {pair && <PieceCompare desk={desk} pair={pair} kept={work.kept} compared={compared} onKeep={work.onKeep} />}
      <h3>{kind ? "All other numbers" : "All numbers"}</h3>
      {pieceGroups.map((group) => {
        const ofGroup = rest.filter((s) => s.group === group);
        const numbers = ofGroup.flatMap(keysOf).length;
        return ofGroup.length > 0 && (
          <Fold key={group} name={capital(group)} holds={numbers === 1 ? "one number" : `${numbers} numbers`} spots={ofGroup.flatMap(spotsIn)}>
            {ofGroup.map((s) => <Sentence key={s.name} desk={desk} rules={rules} sentence={s} />)}
          </Fold>
        );
      })}
      <PieceUsual desk={desk} rules={rules} usuals={usuals} />
    </FollowedHere>
  );
}
