import type { ReactElement } from "react";
import { capital } from "#base/listed.ts";
import { landmarkHelp, measureHelp } from "#last/help.ts";
import type { LandmarkName, MeasureName } from "#last/said.ts";
import { pointNames } from "../state/point-names.ts";
import { readingNames } from "../state/reading-names.ts";

/** What some measures are, and how they are taken here and by hand. */
export function MeasureHow({ of }: { readonly of: readonly MeasureName[] }): ReactElement {
  return <>{of.map((m) => <How key={m} name={readingNames[m]} help={measureHelp[m]} />)}</>;
}

/** What a point of the last is, and how it is found here and by hand. */
export function PointHow({ of }: { readonly of: LandmarkName }): ReactElement {
  return <How name={pointNames[of]} help={landmarkHelp[of]} />;
}

interface HowProps {
  readonly name: string;
  readonly help: { readonly meaning: string; readonly found: string; readonly byHand: string };
}

function How({ name, help: { meaning, found, byHand } }: HowProps): ReactElement {
  return (
    <>
      <p><b>{capital(name)}.</b> {meaning}</p>
      <p><b>Here:</b> {found}</p>
      <p><b>By hand:</b> {byHand}</p>
    </>
  );
}
