import type { ReactElement } from "react";
import type { LastPair } from "#job/pair.ts";
import type { HeightMark, LineRules } from "#lines/lines.ts";
import type { Desk } from "../desk.ts";
import { mm, percent, sayFixed } from "../state/numbers.ts";
import { LineNumber, LineReason } from "./line-number.tsx";
import { WithWhy } from "./why.tsx";

interface StationLinesProps {
  readonly desk: Desk;
  readonly rules: LineRules;
  /** Nothing while no pair can be made: then the numbers stand alone, to be corrected. */
  readonly pair: LastPair | undefined;
}

/** The throat and the topline, as sentences. */
export function StationLines({ desk, rules, pair }: StationLinesProps): ReactElement {
  const at = { desk, rules };
  return (
    <>
      <WithWhy name="throat depth" spots={["lines throatDepthMm"]} why={<LineReason {...at} of="throatDepthMm" />}>
        The throat lies <LineNumber {...at} of="throatDepthMm" /> behind the toe’s feather edge, along the front centre.
      </WithWhy>
      {pair && <ThroatFollows pair={pair} />}
      <WithWhy name="throat radius" spots={["lines throatRadiusMm"]} why={<LineReason {...at} of="throatRadiusMm" />}>
        It is rounded with a radius of <LineNumber {...at} of="throatRadiusMm" />.
      </WithWhy>
      <WithWhy name="back height" spots={["lines backHeightMm"]} why={<LineReason {...at} of="backHeightMm" />}>
        The back stands <LineNumber {...at} of="backHeightMm" /> high, up the heel curve from the feather line.
      </WithWhy>
      <WithWhy name="outer side" spots={["lines sideHeightLateralMm", "lines lowestAtLateral"]} why={<><LineReason {...at} of="sideHeightLateralMm" /><LineReason {...at} of="lowestAtLateral" /></>}>
        The outer side is lowest, <LineNumber {...at} of="sideHeightLateralMm" />, at <LineNumber {...at} of="lowestAtLateral" /> of the length of the last from the heel.
      </WithWhy>
      {pair && <LowestFollows mark={pair.lines.lowestLateral} />}
      <WithWhy name="inner side" spots={["lines sideHeightMedialMm", "lines lowestAtMedial"]} why={<><LineReason {...at} of="sideHeightMedialMm" /><LineReason {...at} of="lowestAtMedial" /></>}>
        The inner side is lowest, <LineNumber {...at} of="sideHeightMedialMm" />, at <LineNumber {...at} of="lowestAtMedial" /> of that length.
      </WithWhy>
      {pair && (
        <>
          <LowestFollows mark={pair.lines.lowestMedial} />
          <p className="follows">{toplineWords(pair)}</p>
          <QuarterHeights pair={pair} />
        </>
      )}
    </>
  );
}

function ThroatFollows({ pair }: { readonly pair: LastPair }): ReactElement {
  const { vampPointFromToe } = pair.last.measures;
  const ahead = vampPointFromToe - pair.lines.settings.throatDepthMm;
  return (
    <p className="follows">
      That is {mm(Math.abs(ahead))} {ahead >= 0 ? "in front of" : "behind"} the vamp point, which lies {mm(vampPointFromToe)} from the toe.
    </p>
  );
}

/** Where the line drawn is truly lowest, as a tape finds it on the last. */
function LowestFollows({ mark }: { readonly mark: HeightMark }): ReactElement {
  return (
    <p className="follows">
      On the last it is lowest {mm(mark.alongFeatherMm, 0)} along the feather line from the seat point, {mm(mark.heightMm)} high.
    </p>
  );
}

/** "topline 412 mm on the last, 403 mm on the card: 2.2 % shorter". */
export function toplineWords({ toplineMm: { onLast, flat } }: LastPair): string {
  const share = flat / onLast - 1;
  const words = Math.abs(share) < 0.0005 ? "the same length" : `${percent(Math.abs(share), 2)} ${share < 0 ? "shorter" : "longer"}`;
  return `Topline ${mm(onLast)} on the last, ${mm(flat)} on the card: ${words}.`;
}

function QuarterHeights({ pair }: { readonly pair: LastPair }): ReactElement {
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
          <th scope="col">of the way from heel to throat</th>
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
