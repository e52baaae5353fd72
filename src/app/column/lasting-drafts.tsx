import type { ReactElement } from "react";
import type { Lasted } from "#lasting/lasted.ts";
import { pullKeys } from "#lasting/pull-keys.ts";
import { draftMark } from "#lasting/pulls.ts";
import { lastingFrom, type LastingChoices } from "#lasting/settings.ts";
import { mm, say, sayFixed } from "../state/numbers.ts";

interface LastingDraftsProps extends Pick<Lasted, "drafts"> {
  /** With what they were pulled. */
  readonly own: Partial<LastingChoices>;
}

/** Every draft in its order: the pull that it took and the most that was allowed, and what margin is left there when it lies. */
export function LastingDrafts({ drafts, own }: LastingDraftsProps): ReactElement {
  const settings = lastingFrom(own), { stopAtMarks } = settings;
  return (
    <table className="figures">
      <caption>The drafts in their order{stopAtMarks ? ": the pull it took, and the most it may take where it stops at its mark" : ""}. Margin: what is left inside the feather line, mm</caption>
      <thead><tr><th scope="col">draft</th><th scope="col">pull, N</th>{stopAtMarks && <th scope="col">at most</th>}<th scope="col">margin</th></tr></thead>
      <tbody>
        {drafts.map((draft) => {
          const { number, name, pullN, word, marginMm, shortMm } = draft;
          return (
            <tr key={number}>
              <th scope="row">{number} · {name}{shortMm !== undefined && <><br /><b>keeps {mm(shortMm)} above its mark</b></>}</th>
              <td>{say(pullN, 0)} {word}</td>
              {stopAtMarks && <td>{draftMark(draft) ? say(settings[pullKeys[number]!], 0) : ""}</td>}
              <td>{sayFixed(marginMm)}</td>
            </tr>
          );
        })}
      </tbody>
    </table>
  );
}
