import { useState, type ReactElement } from "react";
import { explain } from "#base/findings.ts";
import type { LastPair } from "#job/pair.ts";
import { endNames } from "#lasting/log.ts";
import { layingOf } from "#lasting/turn.ts";
import { knownLeathers, type KnownLeather } from "#leather/leather.ts";
import { knownWords } from "#leather/strip-words.ts";
import type { LastingAsked } from "../lasting-talk.ts";
import type { LastingNow, Lastings } from "../lastings.ts";
import { signed } from "../state/numbers.ts";
import { Fold } from "./fold.tsx";
import { WordChoice } from "./word-choice.tsx";

/** Less than this nobody sees on a shoe, mm. */
const hardlyMm = 0.3;

interface LastingAsksProps {
  readonly pair: LastPair;
  readonly lastings: Lastings;
  readonly now: LastingNow;
}

/** What else can be asked of an upper that was pulled over: its bands, the pieces laid turned, another leather on the same pattern. */
export function LastingAsks({ pair, lastings, now }: LastingAsksProps): ReactElement {
  const { banding, turned, swapped, busy } = now;
  const own = pair.leathers.upper.known;
  const [other, setOther] = useState<KnownLeather>(knownLeathers.find((k) => k !== own) ?? own);
  const ask = (asked: LastingAsked): void => lastings.ask({ for: "lasting", job: pair.job, ...asked });
  const word = (text: string, asked: LastingAsked): ReactElement => <button type="button" className="word" aria-disabled={busy !== undefined} onClick={() => (busy ? undefined : ask(asked))}>{text}</button>;
  return (
    <section aria-label="What else may come of it">
      <h3>How sure that is, and what would change it</h3>
      {!banding && <p className="sentence">No two skins are alike. To see between what the ends lie, {word("pull thirty like leathers over", { what: "band" })}. That takes a minute or more.</p>}
      {banding && banding.unsettled > 0 && <p className="follows">{banding.unsettled} of the leathers that were tried did not come to rest and are left out.</p>}
      {!turned && <p className="sentence">To see what the direction on the skin does, {word("lay the pieces turned by 15 degrees", { what: "turn" })}.</p>}
      {turned && (
        <table className="figures">
          <caption>What turning a layer on the skin does to the ends, mm</caption>
          <thead><tr><th scope="col">layer, turned by</th><th scope="col">throat</th><th scope="col">back</th><th scope="col">inner</th><th scope="col">outer</th></tr></thead>
          <tbody>
            {turned.effects.map(({ layer, byDeg, ends }) => (
              <tr key={`${layer} ${byDeg}`}>
                <th scope="row">{layer}, {Math.abs(byDeg)}° {byDeg > 0 ? "left" : "right"}</th>
                <td>{signed(ends.throatDepthMm)}</td><td>{signed(ends.backHeightMm)}</td><td>{signed(ends.innerHeightMm)}</td><td>{signed(ends.outerHeightMm)}</td>
              </tr>
            ))}
          </tbody>
        </table>
      )}
      {turned && turned.effects.every(({ ends }) => endNames.every((name) => Math.abs(ends[name]) < hardlyMm)) && <p className="follows">Turned by 15 degrees, the ends hardly move here. Turned farther they may: say so at the station Leather and pull it over again.</p>}
      {turned && (
        <Fold name="How each piece is usually laid" holds="and why">
          <ul className="findings" aria-label="How the pieces are laid">{layingOf(true).map((f, i) => <li key={i}>{explain(f)}</li>)}</ul>
        </Fold>
      )}
      <p className="sentence">
        To see the same pattern in another leather, {word("pull it over", { what: "swap", other })} in <WordChoice label="the other leather" value={other} options={knownLeathers} say={(k) => knownWords[k]} onChange={setOther} />.
      </p>
      {swapped && now.other === other && <p className="sentence">{explain(swapped.finding)}</p>}
    </section>
  );
}
