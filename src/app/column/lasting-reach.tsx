import type { ReactElement } from "react";
import { explain, severityOf } from "#base/findings.ts";
import type { LastPair } from "#job/pair.ts";
import { byName, endNames, type EndName } from "#lasting/log.ts";
import type { ToplineShift } from "#lasting/shift.ts";
import type { Desk } from "../desk.ts";
import type { LastingWork } from "../lasting-work.ts";
import { isCutSo, setLasting } from "../state/lasting-edits.ts";
import { say, signed } from "../state/numbers.ts";

const endWords: Readonly<Record<EndName, string>> = { throatDepthMm: "throat depth", backHeightMm: "back height", innerHeightMm: "inner side", outerHeightMm: "outer side" };

/** So near the ends come, mm. */
const withinMm = 0.3;

interface LastingReachProps {
  readonly desk: Desk;
  readonly pair: LastPair;
  readonly work: LastingWork;
}

/** A pattern worked out by pulling it over again and again until it ends where it is asked, and the word that takes its numbers. */
export function LastingReach({ desk, pair, work: { lastings, now, holds } }: LastingReachProps): ReactElement {
  const found = now.corrected;
  // Found in the pull-over itself, which needs no other pattern then.
  const there = holds && desk.job.lasting.correct === true && now.lasted !== undefined && endNames.every((name) => Math.abs(byName(now.lasted!.ends)[name] - byName(now.lasted!.asked)[name]) <= withinMm);
  const best = found?.rounds.find(({ shift }) => shift === found.shift || JSON.stringify(shift) === JSON.stringify(found.shift));
  const taken = found !== undefined && isCutSo(desk.job, found.shift);
  // What stands above was the pattern before: the one that is cut now is pulled over at once.
  const cut = (shift: ToplineShift): void => {
    const job = setLasting(desk.job, { correct: true, ...rounded(shift) });
    desk.change(job, "the corrected pattern");
    lastings.ask({ for: "lasting", what: "pull", job });
  };
  return (
    <>
      {there && <p className="follows">Pulled over, it ends where you drew it: throat, back and sides within {say(withinMm)}&nbsp;mm.</p>}
      {(!found || !holds) && !taken && !there && !now.busy && (
        <p className="follows">
          <button type="button" className="word" onClick={() => lastings.ask({ for: "lasting", what: "correct", job: pair.job })}>Work out the pattern that ends there</button>: it is corrected, pulled over and corrected again until throat, back and sides come within {say(withinMm)}&nbsp;mm. That takes from half a minute to some minutes; the work goes on meanwhile.
        </p>
      )}
      {found && best && (
        <>
          <table className="figures">
            <caption>How far the ends miss, mm, on an upper in one piece</caption>
            <thead><tr><th scope="col">end</th><th scope="col">card</th><th scope="col">corrected</th></tr></thead>
            <tbody>{endNames.map((name) => <tr key={name}><th scope="row">{endWords[name]}</th><td>{signed(found.uncorrected[name])}</td><td>{signed(best.miss[name])}</td></tr>)}</tbody>
          </table>
          <ul className="findings" aria-label="What the correction comes to">{[...found.findings, ...found.advice.findings].map((f, i) => <li key={i} className={severityOf(f)}>{explain(f)}</li>)}</ul>
          {!taken && <p><button type="button" className="word" onClick={() => cut(found.shift)}>Cut the pieces so</button></p>}
        </>
      )}
    </>
  );
}

/** To a hundredth: finer than any knife, and no longer than a field shows. */
const rounded = <T extends object>(shift: T): T => Object.fromEntries(Object.entries(shift).map(([key, value]) => [key, Number((value as number).toFixed(2))])) as T;
