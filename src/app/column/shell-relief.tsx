import type { ReactElement } from "react";
import { explain } from "#base/findings.ts";
import { halfName } from "#base/sentences/names.ts";
import type { Proof } from "#job/proof.ts";
import { halves } from "#lines/feather.ts";
import type { FeatherRelief, Nick } from "#shell/relief.ts";
import { sayFixed } from "../state/numbers.ts";
import { WithWhy } from "./why.tsx";

const zoneWords: Readonly<Record<Nick["zone"], string>> = { toe: "round the toe", waist: "at joint and waist", heel: "beside the heel line" };

/** Less than this share of the pulling and gathering is not worth another seam to stitch. */
const worthASeam = 0.05;

/** Where the card is nicked so that it lies down, where never, and what other seams would do. */
export function ShellRelief({ proof: { relief } }: { readonly proof: Proof }): ReactElement {
  const { nicks, mustNot, findings, feather, seams } = relief;
  const of = (...codes: readonly string[]) => findings.filter((f) => codes.includes(f.code));
  const byHalf = (of: (f: FeatherRelief) => number): string => halves.map((h) => signed(of(feather[h]))).join(" and ");
  const best = seams[0];
  return (
    <>
      <WithWhy name="nicks" word="how" spots={[]} why={<>
        {of("nicks-cut").map((f, i) => <p key={i}>{explain(f)}</p>)}
        {nicks.length > 0 && <NickTable nicks={nicks} />}
        {mustNot.map((m) => <p key={m.edge}>{explain(m.reason)}</p>)}
      </>}>
        {nicks.length === 0 ? "The card lies down without a nick in its feather edge." : nickWords(nicks)}
      </WithWhy>
      <p className="follows">
        Against where it lies, over lining, stiffener and puff, its feather edge is then {byHalf((f) => f.withNicksMm - f.overMm)} mm, inner and outer; without nicks {byHalf((f) => f.withoutNicksMm - f.overMm)} mm. The shorter topline makes {byHalf((f) => f.drawnMm)} mm of it.
      </p>
      <ul className="findings">{of("feather-not-true").map((f, i) => <li key={i} className="look">{explain(f)}</li>)}</ul>
      {best && (
        <WithWhy name="seams" spots={[]} why={<>{of("seam-worth").map((f, i) => <p key={i}>{explain(f)}</p>)}</>}>
          {best.gain < worthASeam ? "The back seam alone asks hardly more of the leather than any other way of seams." : "Another way of seams would ask less of the leather than the back seam alone."}
        </WithWhy>
      )}
    </>
  );
}

function nickWords(nicks: readonly Nick[]): string {
  const zones = (["toe", "waist", "heel"] as const).map((zone) => ({ zone, count: nicks.filter((n) => n.zone === zone).length })).filter(({ count }) => count > 0);
  return `To lie down, the card wants ${nicks.length === 1 ? "one nick" : `${nicks.length} nicks`} in its feather edge: ${zones.map(({ zone, count }) => `${count} ${zoneWords[zone]}`).join(", ")}.`;
}

function NickTable({ nicks }: { readonly nicks: readonly Nick[] }): ReactElement {
  return (
    <table className="figures">
      <caption>Nicks along the feather edge, mm</caption>
      <thead>
        <tr><th scope="col">half</th><th scope="col">from seat</th><th scope="col">from toe</th><th scope="col">long</th><th scope="col">open</th></tr>
      </thead>
      <tbody>
        {nicks.map((n) => (
          <tr key={`${n.half} ${n.fromSeatMm}`}>
            <th scope="row">{halfName(n.half)}</th>
            <td>{sayFixed(n.fromSeatMm, 0)}</td>
            <td>{sayFixed(n.fromToeMm, 0)}</td>
            <td>{sayFixed(n.lengthMm, 0)}</td>
            <td>{n.opensMm < 0 ? `laps ${sayFixed(-n.opensMm)}` : sayFixed(n.opensMm)}</td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}

const signed = (mm: number): string => `${mm > 0 ? "+" : ""}${sayFixed(mm)}`;
