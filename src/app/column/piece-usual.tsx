import { useRef, useSyncExternalStore, type ReactElement } from "react";
import type { Rules } from "#job/run-options.ts";
import type { Desk } from "../desk.ts";
import { downloadBytes } from "../download.ts";
import { holdsUsual, withUsual, writeUsual } from "../state/usual.ts";
import { usualWords } from "../state/usual-words.ts";
import type { Usuals } from "../usuals.ts";
import { Chooser } from "./chooser.tsx";
import { Fold } from "./fold.tsx";

interface PieceUsualProps {
  readonly desk: Desk;
  readonly rules: Rules;
  readonly usuals: Usuals;
}

/** The maker's own numbers, with which her next pair begins. */
export function PieceUsual({ desk, rules, usuals }: PieceUsualProps): ReactElement {
  const { usual, said } = useSyncExternalStore(usuals.listen, usuals.look);
  const chooser = useRef<HTMLInputElement>(null);
  const { job } = desk;
  const same = usual !== undefined && holdsUsual(job, usual);
  const word = (text: string, act: () => void): ReactElement => <button type="button" className="word" onClick={act}>{text}</button>;
  return (
    <Fold name="Your usual numbers" holds={usual ? (same ? "as here" : "other than here") : "none kept yet"}>
      <p className="sentence">
        {same ? "These are your usual numbers." : <>{word("Keep these numbers as my usual ones", () => void usuals.keep(job))}: every new pair then begins with your words and numbers of shell, pieces and sheets.</>}
      </p>
      {usual && <p className="follows">Kept: {usualWords(usual, rules)}.</p>}
      <p className="acts-here">
        {usual && !same && word("Take them for this pair", () => desk.change(withUsual(job, usual), "taking the usual numbers"))}
        {usual && word("Forget them", () => void usuals.forget())}
        {usual && word("Save them to a file", () => downloadBytes("my-usual-numbers.json", writeUsual(usual), "application/json"))}
        <button type="button" className="word" onClick={() => chooser.current?.click()}>Read them from a file</button>
      </p>
      <p className="follows" role="status">{said}</p>
      <Chooser at={chooser} label="file of usual numbers" accept=".json,application/json" onFiles={([file]) => file && void usuals.readFrom(file)} />
    </Fold>
  );
}
