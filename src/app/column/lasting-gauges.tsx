import { useMemo, useState, type ReactElement } from "react";
import type { LastPair } from "#job/pair.ts";
import type { Side } from "#last/last.ts";
import type { Foretold } from "#lasting/foretold.ts";
import { gaugesOf, mirroredGauges, type GaugeMark } from "#lasting/gauges.ts";
import { sayFixed } from "../state/numbers.ts";
import { WordChoice } from "./word-choice.tsx";

interface LastingGaugesProps {
  readonly pair: LastPair;
  readonly foretold: Foretold | undefined;
}

const sides: readonly Side[] = ["left", "right"];
const halfNames = { medial: "Inner side", lateral: "Outer side" } as const;

/** The marks by which both lasts are made alike, as tape lengths; the same for both, on the mirrored side. */
export function LastingGauges({ pair: { last, lines, pieceSettings, shellSettings, seams, beneath }, foretold }: LastingGaugesProps): ReactElement {
  const own = useMemo(() => gaugesOf({ last, lines, settings: pieceSettings, shell: shellSettings, beneath, ...(seams && { seams }), ...(foretold && { foretold }) }), [last, lines, pieceSettings, shellSettings, beneath, seams, foretold]);
  const [side, setSide] = useState<Side>(last.side);
  const gauges = side === own.side ? own : mirroredGauges(own);
  const groups: readonly (readonly [string, readonly GaugeMark[]])[] = [
    ["On the centre", gauges.marks.filter((m) => m.half === undefined)],
    ...(["medial", "lateral"] as const).map((half) => [`${halfNames[half]}, ${leftOrRight(side, half)}, toe held away from you`, gauges.marks.filter((m) => m.half === half)] as const),
  ];
  return (
    <>
      <p className="sentence">
        The marks on the <WordChoice label="which last is marked" value={side} options={sides} onChange={setSide} /> last, as a tape lies on the bare last. Along: along the feather line from the seat; up: from there, or from the toe or the seat on the centre. Every length is the same on the other last, and its sides change places.
      </p>
      {groups.map(([name, marks]) => (
        <table key={name} className="figures">
          <caption>{name}, mm</caption>
          <thead><tr><th scope="col">mark</th><th scope="col">along</th><th scope="col">up</th></tr></thead>
          <tbody>{marks.map((m) => <tr key={m.key}><th scope="row">{m.letter} · {m.name}</th><td>{length(m.alongMm)}</td><td>{length(m.lengthMm)}</td></tr>)}</tbody>
        </table>
      ))}
      {gauges.overUpper && <p className="follows">Over the lasted upper a tape reads {sayFixed(gauges.overUpper.throatMm)} mm more to the throat, {sayFixed(gauges.overUpper.backMm)} mm more up the back, and {sayFixed(gauges.overUpper.lowestMm.medial)} and {sayFixed(gauges.overUpper.lowestMm.lateral)} mm more up the inner and outer side at its lowest.</p>}
      <p className="follows">The sheets hold all of this as marks.pdf, with pictures.</p>
    </>
  );
}

const length = (mm: number | undefined): string => (mm === undefined ? "–" : sayFixed(mm));

/** The inner side lies on the left of a right last that is held toe away, bottom down. */
const leftOrRight = (side: Side, half: "medial" | "lateral"): string => ((side === "right") === (half === "medial") ? "left" : "right");
