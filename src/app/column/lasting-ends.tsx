import type { ReactElement } from "react";
import type { BandedEnds, Ends } from "#lasting/lasted.ts";
import { sayFixed, signed } from "../state/numbers.ts";

interface LastingEndsProps {
  readonly asked: Ends;
  readonly ends: Ends;
  /** With the bands, once leathers of this kind have been drawn. */
  readonly banded: BandedEnds | undefined;
}

/** Where the topline ends: what was asked for, and what the pull-over comes to; with its band once that is known. */
export function LastingEnds({ asked, ends, banded }: LastingEndsProps): ReactElement {
  const rows = [
    { name: "throat depth", is: ends.throatDepthMm, want: asked.throatDepthMm, band: banded?.throatDepthMm },
    { name: "back height", is: ends.backHeightMm, want: asked.backHeightMm, band: banded?.backHeightMm },
    { name: "inner side, lowest", is: ends.lowestMm.medial, want: asked.lowestMm.medial, band: banded?.innerHeightMm },
    { name: "outer side, lowest", is: ends.lowestMm.lateral, want: asked.lowestMm.lateral, band: banded?.outerHeightMm },
  ];
  return (
    <table className="figures">
      <caption>Where the topline ends, mm, as a tape lies{banded ? "; in brackets where 8 of 10 leathers of this kind end" : ""}</caption>
      <thead><tr><th scope="col">measure</th><th scope="col">asked</th><th scope="col">foretold</th><th scope="col">differs</th></tr></thead>
      <tbody>
        {rows.map(({ name, is, want, band }) => (
          <tr key={name}>
            <th scope="row">{name}</th>
            <td>{sayFixed(want)}</td>
            <td>{sayFixed(band?.predicted ?? is)}{band && <span className="limits"> ({sayFixed(band.low)} to {sayFixed(band.high)})</span>}</td>
            <td>{signed((band?.predicted ?? is) - want)}</td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}
