import { useMemo, useState, type ReactElement } from "react";
import type { Lasted } from "#lasting/lasted.ts";
import type { LastPair } from "#job/pair.ts";
import { useSteps, type Steps } from "../state/frames.ts";
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
  const steps = useSteps(lasted.frames.length, lasted);
  const what = useMemo(() => lasted.frames.map((f) => f.what), [lasted]);
  return (
    <>
      <div className="views"><LastedView pair={pair} lasted={lasted} at={steps.at} map={map} ink={ink} from={from} /></div>
      <div className="under">
        <LookFrom onLook={(name) => lookFrom({ name })} />
        {former && <p><b>From before the last change.</b></p>}
      </div>
      {steps.count > 1 && <StepThrough steps={steps} what={what} />}
    </>
  );
}

/** Words and a slider to go through the pull-over. */
function StepThrough({ steps, what }: { readonly steps: Steps; readonly what: readonly string[] }): ReactElement {
  const { at, count } = steps;
  return (
    <div className="under steps">
      <p>
        <button type="button" className="word" disabled={at === 0} onClick={() => steps.goTo(at - 1)}>Step back</button>
        <button type="button" className="word" disabled={at === count - 1} onClick={() => steps.goTo(at + 1)}>Next step</button>
        {!steps.still && <button type="button" className="word" onClick={steps.playing ? steps.pause : steps.play}>{steps.playing ? "Hold" : "Play the pull-over"}</button>}
      </p>
      <p className="step-slider">
        <input type="range" min={0} max={count - 1} step={1} value={at} aria-label="step of the pull-over" aria-valuetext={`${what[at]}, ${at + 1} of ${count}`} onChange={(e) => steps.goTo(Number(e.target.value))} />
        <span>{at + 1} of {count}</span>
      </p>
    </div>
  );
}
