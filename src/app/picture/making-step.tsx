import { useId, type ReactElement } from "react";
import type { Caution } from "#making/care/caution.ts";
import { readMoment, type Moment } from "#making/calendar/dates.ts";
import { shoes, type Shoe, type StepState } from "#making/calendar/progress.ts";
import type { StepDone } from "#making/said.ts";
import type { Step } from "#making/steps/step.ts";
import { listed } from "#base/listed.ts";
import { hours } from "../state/making-words.ts";
import { stepWords } from "../state/step-words.ts";
import { StepCare } from "./step-care.tsx";
import { StepDoneAt } from "./step-done-at.tsx";

interface MakingStepProps {
  readonly step: Step;
  readonly number: number;
  /** How long it takes, in words. */
  readonly takes: string;
  readonly state: StepState;
  readonly done: StepDone | undefined;
  readonly now: Moment;
  readonly cautions: readonly Caution[];
  readonly titleOf: (id: string) => string;
  readonly open: boolean;
  readonly onOpen: (open: boolean) => void;
  readonly onTick: (shoes: readonly Shoe[], at: Moment | undefined) => void;
  /** Sets right when it was done on a shoe. */
  readonly onSetTime: (shoe: Shoe, at: Moment) => void;
}

/** One step: what to do when it is opened, how it stands, and a tick for each shoe. */
export function MakingStep({ step, number, takes, state, done, now, cautions, titleOf, open, onOpen, onTick, onSetTime }: MakingStepProps): ReactElement {
  const id = useId();
  const ticked = state.both.is === "done" || state.both.is === "drying";
  // A pattern is made once, for both.
  const once = step.phase === "pattern" && step.shoes === "together";
  return (
    <li className={`work-step ${state.both.is.replace(" ", "-")}`} id={`step-${step.id}`}>
      <div className="work-line">
        <div className="work-name">
          <h4><button type="button" className="word" aria-expanded={open} aria-controls={id} onClick={() => onOpen(!open)}>{number}. {step.title}</button></h4>
          <p className="follows"><span className="stands">{stepWords(state, done, now, titleOf)}</span> · {takes}</p>
        </div>
        <p className="ticks">
          {once && <label><input type="checkbox" aria-label={`done: ${step.title}`} checked={ticked} onChange={(e) => onTick(shoes, e.target.checked ? now : undefined)} /> done</label>}
          {!once && shoes.map((shoe) => (
            <label key={shoe}><input type="checkbox" aria-label={`${shoe}: ${step.title}`} checked={Boolean(done?.[shoe])} onChange={(e) => onTick([shoe], e.target.checked ? now : undefined)} /> {shoe}</label>
          ))}
          {!once && <button type="button" className="word" aria-disabled={ticked} aria-label={`both: ${step.title}`} onClick={() => !ticked && onTick(shoes.filter((shoe) => !done?.[shoe]), now)}>both</button>}
        </p>
      </div>
      {(!ticked || open) && <StepCare of={cautions} title={step.title} />}
      <div className="work-open" id={id} hidden={!open}>{open && <Opened step={step} done={done} now={now} onSetTime={onSetTime} />}</div>
    </li>
  );
}

function Opened({ step, done, now, onSetTime }: Pick<MakingStepProps, "step" | "done" | "now" | "onSetTime">): ReactElement {
  const { todo, needs, right, fails, wait } = step;
  return (
    <>
      <div>
        <ol className="todo">{todo.map((line) => <li key={line}>{line}</li>)}</ol>
        {wait && <p>Then {wait.what}: {waitWords(wait)}. <span className="follows">{wait.source}.</span></p>}
        <p className="follows">{step.shoes === "together" ? "Do both shoes in one go." : "Do one shoe right after the other, with the same numbers."}</p>
        {shoes.map((shoe) => {
          const at = readMoment(done?.[shoe] ?? "");
          return at !== undefined && <StepDoneAt key={shoe} shoe={shoe} at={at} now={now} onSet={(set) => onSetTime(shoe, set)} />;
        })}
      </div>
      <div>
        {(needs.goods.length > 0 || needs.tools.length > 0) && <p><b>Have at hand</b>: {listed([...needs.goods, ...needs.tools])}.</p>}
        <Lines title="It is right when" lines={right} />
        <Lines title="Where it goes wrong" lines={fails} />
      </div>
    </>
  );
}

function Lines({ title, lines }: { readonly title: string; readonly lines: readonly string[] }): ReactElement | null {
  if (lines.length === 0) return null;
  return (
    <>
      <p><b>{title}</b></p>
      <ul>{lines.map((line) => <li key={line}>{line}</li>)}</ul>
    </>
  );
}

function waitWords({ leastMin, wellMin, mostMin }: NonNullable<Step["wait"]>): string {
  if (wellMin === 0 && mostMin !== undefined) return `go on within ${hours(mostMin)}`;
  const well = wellMin > leastMin ? `, better ${hours(wellMin)}` : "";
  return `${hours(leastMin)} at the least${well}${mostMin === undefined ? "" : `; go on within ${hours(mostMin)}`}`;
}
