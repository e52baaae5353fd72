import { useMemo, useState, type ReactElement } from "react";
import type { Lasted } from "#lasting/lasted.ts";
import type { LastPair } from "#job/pair.ts";
import { useSteps, type Steps } from "../state/frames.ts";
import { pullSteps, type PullStep } from "../state/pull-steps.ts";
import type { EyeName } from "./eyes.ts";
import { useInk } from "./ink.ts";
import type { LastedMap } from "./lasted-map.ts";
import { LastedView } from "./lasted-view.tsx";
import { LookFrom } from "./look-from.tsx";

interface LastingPictureProps {
  readonly pair: LastPair;
  readonly lasted: Lasted;
  readonly map: LastedMap;
  /** It was worked out before the last change. */
  readonly former: boolean;
}

/** The pull-over on the last: its steps one after the other, and what it comes to. */
export function LastingPicture({ pair, lasted, map, former }: LastingPictureProps): ReactElement {
  const ink = useInk();
  const [from, lookFrom] = useState<{ readonly name: EyeName }>({ name: "outer side" });
  const all = useMemo(() => pullSteps(lasted), [lasted]);
  const steps = useSteps(all.length, lasted);
  return (
    <>
      <div className="views"><LastedView pair={pair} lasted={lasted} steps={all} at={steps.at} still={steps.still} map={map} ink={ink} from={from} /></div>
      <div className="under">
        <LookFrom onLook={(name) => lookFrom({ name })} />
        {former && <p><b>From before the last change.</b></p>}
      </div>
      {steps.count > 1 && <StepThrough steps={steps} of={all} />}
    </>
  );
}

/** Words and a slider to go through the pull-over. */
function StepThrough({ steps, of }: { readonly steps: Steps; readonly of: readonly PullStep[] }): ReactElement {
  const { at, count } = steps;
  return (
    <div className="under steps">
      <p>
        <button type="button" className="word" disabled={at === 0} onClick={() => steps.goTo(at - 1)}>Step back</button>
        <button type="button" className="word" disabled={at === count - 1} onClick={() => steps.goTo(at + 1)}>Next step</button>
        {!steps.still && <button type="button" className="word" onClick={steps.playing ? steps.pause : steps.play}>{steps.playing ? "Stop playing" : "Play the pull-over"}</button>}
      </p>
      <p className="step-slider">
        <input type="range" min={0} max={count - 1} step={1} value={at} aria-label="step of the pull-over" aria-valuetext={`${of[at]!.what}${of[at]!.goesOn ? ", being drawn" : ""}, ${at + 1} of ${count}`} onChange={(e) => steps.goTo(Number(e.target.value))} />
        <span>{at + 1} of {count}</span>
      </p>
    </div>
  );
}
