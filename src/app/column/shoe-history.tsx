import { useMemo, type ReactElement } from "react";
import { explain, severityOf } from "#base/findings.ts";
import type { Job } from "#job/job.ts";
import type { LastPair } from "#job/pair.ts";
import { historyOf, type PairRow } from "#lasting/log-history.ts";
import type { Verdict } from "#lasting/log-judge.ts";
import { signed } from "../state/numbers.ts";

const judged = (verdict: Verdict | undefined): string => verdict ?? "not told";

/** All pairs by last and leather, how they were judged, and what this leather's shoes taught about it. */
export function ShoeHistory({ log, learned }: Pick<Job, "log"> & Pick<LastPair["leathers"], "learned">): ReactElement {
  const history = useMemo(() => historyOf(log), [log]);
  return (
    <>
      {history.map(({ last: on, leather, pairs }) => (
        <table key={`${on} ${leather}`} className="figures">
          <caption>{leather} on {on}</caption>
          <thead><tr><th scope="col">pair</th><th scope="col">alike</th><th scope="col">as asked</th><th scope="col">throat off, mm</th></tr></thead>
          <tbody>{pairs.map((p) => <tr key={p.pair}><th scope="row">{p.pair}</th><td>{judged(p.alike?.verdict)}</td><td>{asAsked(p)}</td><td>{p.missMm === undefined ? "" : signed(p.missMm)}</td></tr>)}</tbody>
        </table>
      ))}
      <p className="follows">Throat off: measured less foretold. What they teach about this leather:</p>
      <ul className="findings" aria-label="What the shoes teach">{learned.explained.map((f, i) => <li key={i} className={severityOf(f)}>{explain(f)}</li>)}</ul>
    </>
  );
}

/** The worse of the two shoes. */
function asAsked({ asAsked: { left, right } }: PairRow): string {
  const order: readonly Verdict[] = ["outside", "just inside", "inside"];
  return judged(order.find((v) => left?.verdict === v || right?.verdict === v));
}
