import type { ReactElement } from "react";
import type { Pair } from "#job/pair.ts";
import type { HeightMark } from "#lines/lines.ts";
import type { Desk } from "../desk.ts";
import { mm, percent, sayFixed } from "../state/numbers.ts";
import { LineNumber, LineReason } from "./line-number.tsx";
import { WithWhy } from "./why.tsx";

/** The throat and the topline, as sentences. */
export function StationLines({ desk, pair }: { readonly desk: Desk; readonly pair: Pair }): ReactElement {
  const at = { desk, pair };
  const { measures } = pair.last;
  const { settings } = pair.lines;
  const ahead = measures.vampPointFromToe - settings.throatDepthMm;
  return (
    <>
      <WithWhy name="throat depth" why={<LineReason {...at} of="throatDepthMm" />}>
        The throat lies <LineNumber {...at} of="throatDepthMm" /> behind the toe’s feather edge, along the front centre.
      </WithWhy>
      <p className="follows">
        That is {mm(Math.abs(ahead))} {ahead >= 0 ? "in front of" : "behind"} the vamp point, which lies {mm(measures.vampPointFromToe)} from the toe.
      </p>
      <WithWhy name="throat radius" why={<LineReason {...at} of="throatRadiusMm" />}>
        It is rounded with a radius of <LineNumber {...at} of="throatRadiusMm" />.
      </WithWhy>
      <WithWhy name="back height" why={<LineReason {...at} of="backHeightMm" />}>
        The back stands <LineNumber {...at} of="backHeightMm" /> high, up the heel curve from the feather line.
      </WithWhy>
      <WithWhy name="outer side" why={<><LineReason {...at} of="sideHeightLateralMm" /><LineReason {...at} of="lowestAtLateral" /></>}>
        The outer side is lowest, <LineNumber {...at} of="sideHeightLateralMm" />, at <LineNumber {...at} of="lowestAtLateral" /> of the length from the heel.
      </WithWhy>
      <WithWhy name="inner side" why={<><LineReason {...at} of="sideHeightMedialMm" /><LineReason {...at} of="lowestAtMedial" /></>}>
        The inner side is lowest, <LineNumber {...at} of="sideHeightMedialMm" />, at <LineNumber {...at} of="lowestAtMedial" />.
      </WithWhy>
      <p className="follows">{toplineWords(pair)}</p>
      <QuarterHeights pair={pair} />
    </>
  );
}

/** "topline 412 mm on the last, 403 mm on the card: 2.2 % shorter". */
export function toplineWords({ toplineMm: { onLast, flat } }: Pair): string {
  const share = flat / onLast - 1;
  const words = Math.abs(share) < 0.0005 ? "the same length" : `${percent(Math.abs(share))} ${share < 0 ? "shorter" : "longer"}`;
  return `Topline ${mm(onLast)} on the last, ${mm(flat)} on the card: ${words}.`;
}

function QuarterHeights({ pair }: { readonly pair: Pair }): ReactElement {
  const { medial, lateral } = pair.lines.quarterHeights;
  const row = (name: string, marks: readonly HeightMark[]): ReactElement => (
    <tr>
      <th scope="row">{name}</th>
      {marks.map((m) => <td key={m.share}>{sayFixed(m.heightMm)}</td>)}
    </tr>
  );
  return (
    <table className="figures">
      <caption>Heights above the feather line, tape on the last, mm</caption>
      <thead>
        <tr>
          <th scope="col">along the flank from the heel</th>
          {medial.map((m) => <th key={m.share} scope="col">{m.share === 0.5 ? "½" : m.share < 0.5 ? "¼" : "¾"}</th>)}
        </tr>
      </thead>
      <tbody>
        {row("inner side", medial)}
        {row("outer side", lateral)}
      </tbody>
    </table>
  );
}
