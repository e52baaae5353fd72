import type { ReactElement } from "react";
import { landmarkHelp, measureHelp } from "#last/help.ts";
import type { LandmarkName, MeasureName } from "#last/said.ts";

/** What some measures are, and how they are taken here and by hand. */
export function MeasureHow({ of }: { readonly of: readonly MeasureName[] }): ReactElement {
  return <>{of.map((m) => <How key={m} help={measureHelp[m]} />)}</>;
}

/** What a point of the last is, and how it is found here and by hand. */
export function PointHow({ of }: { readonly of: LandmarkName }): ReactElement {
  return <How help={landmarkHelp[of]} />;
}

interface HowProps {
  readonly help: { readonly meaning: string; readonly found: string; readonly byHand: string };
}

function How({ help: { meaning, found, byHand } }: HowProps): ReactElement {
  return (
    <>
      <p>{meaning}</p>
      <p><b>Here:</b> {found}</p>
      <p><b>By hand:</b> {byHand}</p>
    </>
  );
}
