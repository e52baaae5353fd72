import type { ReactElement } from "react";
import { explain, severityOf } from "#base/findings.ts";
import type { Proof } from "#job/proof.ts";
import type { CheckKey, CheckRow } from "#shell/check-rows.ts";
import { percent, sayFixed } from "../state/numbers.ts";
import { WithWhy } from "./why.tsx";

const names: Readonly<Record<CheckKey, string>> = {
  "topline-free": "topline, not yet shortened",
  "topline-drawn": "topline, shortened",
  back: "back curve",
  "throat-depth": "throat depth",
  feather: "feather edge, joint to heel",
  "joint-girth": "half round the joint",
  area: "area",
  flank: "stands off at the flank",
};
const order: readonly CheckKey[] = ["topline-free", "topline-drawn", "back", "throat-depth", "feather", "joint-girth", "area", "flank"];

/** The card held against the last, as a maker does it with a tape, and where it gapes. */
export function ShellCheck({ proof: { check } }: { readonly proof: Proof }): ReactElement {
  const off = check.rows.filter((r) => !r.holds).length;
  return (
    <>
      <WithWhy name="check on the last" word="how" spots={[]} why={<CheckReason />}>
        Laid back on the last, {off === 0 ? "the card is true in every check." : off === 1 ? "the card is off in one check." : `the card is off in ${off} checks.`}
      </WithWhy>
      <table className="figures">
        <caption>Card against the last, mm; limits below</caption>
        <thead><tr><th scope="col">check</th><th scope="col">inner</th><th scope="col">outer</th></tr></thead>
        <tbody>{order.map((key) => <Row key={key} name={names[key]} rows={check.rows.filter((r) => r.key === key)} />)}</tbody>
      </table>
      <ul className="findings">{check.findings.map((f, i) => <li key={i} className={severityOf(f)}>{explain(f)}</li>)}</ul>
    </>
  );
}

function Row({ name, rows }: { readonly name: string; readonly rows: readonly CheckRow[] }): ReactElement {
  const [first] = rows;
  const whole = rows.find((r) => r.half === undefined);
  return (
    <tr>
      <th scope="row">{name}{first && <span className="limits"> {limitWords(first)}</span>}</th>
      {whole ? <td colSpan={2}>{offWords(whole)}</td> : (["medial", "lateral"] as const).map((half) => <td key={half}>{rows.filter((r) => r.half === half).map(offWords)}</td>)}
    </tr>
  );
}

const offOf = (r: CheckRow): number => r.onCardMm - r.onLastMm;

/** How far the card is off, and where that is too far in words as well. */
function offWords(r: CheckRow): ReactElement {
  const text = r.key === "area" ? percent(offOf(r) / r.onLastMm) : sayFixed(offOf(r));
  return r.holds ? <>{text}</> : <b>{text} – off</b>;
}

function limitWords({ key, onLastMm, leastMm, mostMm }: CheckRow): string {
  if (key === "area") return `±${percent(mostMm / onLastMm, 0)}`;
  if (key === "flank") return `at most ${sayFixed(mostMm)}`;
  return leastMm === -mostMm ? `±${sayFixed(mostMm)}` : `${sayFixed(leastMm)} to ${mostMm > 0 ? "+" : ""}${sayFixed(mostMm)}`;
}

function CheckReason(): ReactElement {
  return (
    <>
      <p>The net card is laid back on the last as a sheet that bends but hardly stretches, its back edges taped together and its feather edge nicked, and held down by a light hand. What is then long, short or hollow is told here before any leather is cut.</p>
      <p>The lengths are good to a tenth or two. How far the card stands off hangs on card and hand: it is laid by a usual, a firm and a light one. Use it to compare one draft of yours with the next.</p>
      <p>Check the first pair by hand all the same: cut the net card, tape its back, and hold it on the last.</p>
      <p className="source">Common practice, no source, for what is checked and for its limits.</p>
    </>
  );
}
