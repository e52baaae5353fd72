import type { ReactElement } from "react";
import type { Lasted } from "#lasting/lasted.ts";
import { say, sayFixed } from "../state/numbers.ts";

/** Every draft in its order: how it is pulled, and what margin is left there when it lies. */
export function LastingDrafts({ drafts }: Pick<Lasted, "drafts">): ReactElement {
  return (
    <table className="figures">
      <caption>The drafts in their order. Margin: what is left inside the feather line, mm</caption>
      <thead><tr><th scope="col">draft</th><th scope="col">pull</th><th scope="col">margin</th></tr></thead>
      <tbody>
        {drafts.map(({ number, name, pullN, word, marginMm }) => (
          <tr key={number}><th scope="row">{number} · {name}</th><td>{word}, {say(pullN, 0)} N</td><td>{sayFixed(marginMm)}</td></tr>
        ))}
      </tbody>
    </table>
  );
}
