import type { ReactElement } from "react";
import { capital } from "#base/listed.ts";
import type { Caution, Limit } from "#making/care/caution.ts";
import type { ToolNeed } from "#making/tools/tool-need.ts";
import type { MakingViewProps } from "../state/making-views.ts";
import { say } from "../state/numbers.ts";

/** What to have on the bench and what may stand in for it; and what can hurt. */
export function MakingTools({ making: { tools, cautions, steps } }: Pick<MakingViewProps, "making">): ReactElement {
  const must = tools.filter((t) => t.must), lighter = tools.filter((t) => !t.must);
  const titleOf = (id: string): string => steps.find((s) => s.id === id)?.title ?? id;
  return (
    <section className="making-page">
      <h2>Tools for this pair</h2>
      {cautions.length > 0 && <p className="follows">What can hurt stands below them: {cautions.map((c, k) => <span key={c.hazard}>{k > 0 && ", "}<button type="button" className="word" onClick={() => goTo(c)}>{c.title}</button></span>)}.</p>}
      <Tools title="Not without these" of={must} titleOf={titleOf} />
      <Tools title="These make it lighter" of={lighter} titleOf={titleOf} />
      {cautions.length > 0 && (
        <>
          <h2>Take care</h2>
          <p>The safety data sheet of your own product, your local rules and licensed practice come first; nothing here replaces them, and no limit means that a little less does no harm.</p>
          {cautions.map((c) => <Care key={c.hazard} caution={c} titleOf={titleOf} />)}
        </>
      )}
    </section>
  );
}

const placeOf = ({ hazard }: Caution): string => `care-${hazard.replaceAll(" ", "-")}`;

function goTo(caution: Caution): void {
  const place = document.getElementById(placeOf(caution));
  place?.scrollIntoView({ block: "start" });
  place?.querySelector("h3")?.focus({ preventScroll: true });
}

function Tools({ title, of, titleOf }: { readonly title: string; readonly of: readonly ToolNeed[]; readonly titleOf: (id: string) => string }): ReactElement | null {
  if (of.length === 0) return null;
  return (
    <section aria-label={title}>
      <h3>{title}</h3>
      <ul className="tools">
        {of.map((t) => (
          <li key={t.tool}>
            <p><b>{capital(t.tool)}</b>{t.buy === "later" && <span className="follows">, once you go on</span>}</p>
            <p className="follows">{t.use} {insteadWords(t)}</p>
            {t.steps.length > 0 && <p className="follows first-used">First at: {titleOf(t.steps[0]!)}</p>}
          </li>
        ))}
      </ul>
    </section>
  );
}

/** What may stand in for a tool, or that nothing does. */
function insteadWords({ standIn, noStandIn = "" }: ToolNeed): string {
  if (standIn) return `In its place: ${small(standIn)}`;
  return noStandIn.startsWith("Nothing: ") ? `In its place ${small(noStandIn)}` : noStandIn;
}

const small = (words: string): string => (/^[A-Z]{2}/.test(words) ? words : words.charAt(0).toLowerCase() + words.slice(1));

function Care({ caution, titleOf }: { readonly caution: Caution; readonly titleOf: (id: string) => string }): ReactElement {
  const { title, what, care, law = [], limits = [], room = [], first, source, steps } = caution;
  return (
    <section className="care" aria-label={title} id={placeOf(caution)}>
      <h3 tabIndex={-1}>{title}</h3>
      <p>{what}</p>
      <ol>{care.map((c) => <li key={c}>{c}</li>)}</ol>
      {room.length > 0 && <p>{room.join(" ")}</p>}
      {limits.length > 0 && <Limits of={limits} />}
      {law.length > 0 && <ul className="findings">{law.map((l) => <li key={l}>{l}</li>)}</ul>}
      <p>{first}</p>
      {steps.length > 0 && <p className="follows">At: {[...new Set(steps.map(titleOf))].join("; ")}.</p>}
      <p className="follows">{source}.</p>
    </section>
  );
}

/** Limits for the air at work, by substance, each with who set it and when. */
function Limits({ of }: { readonly of: readonly Limit[] }): ReactElement {
  return (
    <table className="figures limits-of-air">
      <caption>Limits for the air at work, mean over eight hours. They promise nothing: still ventilate, still wear the mask.</caption>
      <thead><tr><th scope="col">in the cement</th><th scope="col">who says so</th><th scope="col">ppm</th><th scope="col">mg/m³</th></tr></thead>
      <tbody>
        {of.map((l) => (
          <tr key={`${l.substance} ${l.jurisdiction}`}>
            <th scope="row">{l.substance}</th>
            <td><b>{l.jurisdiction}</b>, {l.kind}; {l.date}{l.skin && "; passes through the skin as well"}{l.fromMemory && "; from memory"}</td>
            <td>{say(l.ppm, 1)}</td>
            <td>{say(l.mgPerM3, 0)}</td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}
