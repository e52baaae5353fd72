import type { ReactElement } from "react";
import { explain, severityOf } from "#base/findings.ts";
import type { LastPair } from "#job/pair.ts";
import { endNames, type EndName } from "#lasting/log.ts";
import type { Desk } from "../desk.ts";
import type { LastingWork } from "../lasting-work.ts";
import { setLasting } from "../state/lasting-edits.ts";
import { signed } from "../state/numbers.ts";

const endWords: Readonly<Record<EndName, string>> = { throatDepthMm: "throat depth", backHeightMm: "back height", innerHeightMm: "inner side", outerHeightMm: "outer side" };

interface LastingReachProps {
  readonly desk: Desk;
  readonly pair: LastPair;
  readonly work: LastingWork;
}

/** A pattern worked out by pulling it over again and again until it ends where it is asked, and the word that takes its numbers. */
export function LastingReach({ desk, pair, work: { lastings, now, holds } }: LastingReachProps): ReactElement {
  const found = now.corrected;
  const best = found?.rounds.find(({ shift }) => shift === found.shift || JSON.stringify(shift) === JSON.stringify(found.shift));
  const taken = found !== undefined && desk.job.lasting.correct === true && Object.entries(found.shift).every(([key, value]) => Math.abs((desk.job.lasting[key as keyof typeof found.shift] ?? 0) - value) < 0.01);
  return (
    <>
      {(!found || !holds) && !taken && !now.busy && (
        <p className="follows">
          <button type="button" className="word" onClick={() => lastings.ask({ for: "lasting", what: "correct", job: pair.job })}>Work out the pattern that ends there</button>: it is corrected, pulled over and corrected again until throat, back and sides come within 0.3 mm. That takes some minutes.
        </p>
      )}
      {found && best && (
        <>
          <table className="figures">
            <caption>How far the ends miss, mm, on an upper in one piece</caption>
            <thead><tr><th scope="col">end</th><th scope="col">card</th><th scope="col">corrected</th></tr></thead>
            <tbody>{endNames.map((name) => <tr key={name}><th scope="row">{endWords[name]}</th><td>{signed(found.uncorrected[name])}</td><td>{signed(best.miss[name])}</td></tr>)}</tbody>
          </table>
          <ul className="findings" aria-label="What the correction comes to">{found.findings.map((f, i) => <li key={i} className={severityOf(f)}>{explain(f)}</li>)}</ul>
          {!taken && <p><button type="button" className="word" onClick={() => desk.change(setLasting(desk.job, { correct: true, ...rounded(found.shift) }), "the corrected pattern")}>Cut the pieces so</button></p>}
        </>
      )}
    </>
  );
}

/** To a hundredth: finer than any knife, and no longer than a field shows. */
const rounded = <T extends object>(shift: T): T => Object.fromEntries(Object.entries(shift).map(([key, value]) => [key, Number((value as number).toFixed(2))])) as T;
