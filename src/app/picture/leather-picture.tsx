import { useMemo, type ReactElement } from "react";
import type { Pair } from "#job/pair.ts";
import { lastingFrom } from "#lasting/settings.ts";
import { knownWords } from "#leather/strip-words.ts";
import { leatherSights, sightWords, type LeatherSight } from "../state/leather-sight.ts";
import { leatherNow } from "../state/leathers.ts";
import { LaidWays } from "./laid-ways.tsx";
import { StripPlotView } from "./strip-plot.tsx";
import { StripTestView } from "./strip-test.tsx";

interface LeatherPictureProps {
  readonly pair: Pair;
  readonly sight: LeatherSight;
  readonly onSight: (sight: LeatherSight) => void;
}

/** What was read on strips of a leather, how the pieces are laid on the skin, or how a strip is tested. */
export function LeatherPicture({ pair, sight, onSight }: LeatherPictureProps): ReactElement {
  const { upperTurnDeg, liningTurnDeg } = lastingFrom(pair.job.lasting);
  return (
    <>
      {sight === "laid" ? <LaidWays pieces={pair.pieces} turns={{ upper: upperTurnDeg, lining: liningTurnDeg }} /> : sight === "test" ? <StripTestView /> : <Plot pair={pair} of={sight} />}
      <div className="under">
        <p>
          <span>Look at</span>
          {leatherSights.map((s) => <button key={s} type="button" className="word" aria-pressed={s === sight} onClick={() => onSight(s)}>{sightWords[s]}</button>)}
        </p>
        {sight === "laid" && <p>Pieces of the right shoe; the arrow is the skin’s direction of least stretch. The left shoe’s are their mirror images.</p>}
        {(sight === "upper" || sight === "lining") && <p>Points: what you read. Lines: what is reckoned with. Shade: where 9 of 10 skins lie.</p>}
      </div>
    </>
  );
}

function Plot({ pair, of }: { readonly pair: Pair; readonly of: "upper" | "lining" }): ReactElement {
  const said = pair.job.leather[of];
  const fit = useMemo(() => leatherNow(said, of), [said, of]);
  const name = said?.name?.trim() || knownWords[fit.leather.known];
  return <StripPlotView fit={fit} title={`The ${of}’s leather: ${name}`} />;
}
