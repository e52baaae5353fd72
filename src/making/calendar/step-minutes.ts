import { finding, type Finding } from "#base/findings.ts";
import { readFigure } from "../amounts/read-figure.ts";
import { readQuantity } from "../amounts/read-quantity.ts";
import type { MakingSaid, Written } from "../said.ts";
import { phases, type Phase, type Step } from "../steps/step.ts";

/** Hands-on minutes for one pair. */
export interface StepMinutes {
  /** By step's id; those of a phase scaled alike where the maker says how long the phase takes her. Not rounded. */
  readonly of: ReadonlyMap<string, number>;
  /** The phases that have steps, in their order. */
  readonly byPhase: readonly { readonly phase: Phase; readonly minutes: number }[];
  /** What cannot be read of the maker's minutes. Told once, with the money. */
  readonly findings: readonly Finding[];
}

/** How often a step is done for all pairs: a pattern is made once for all of them, and lasts are marked once. */
export const timesDone = ({ id, phase }: Pick<Step, "id" | "phase">, pairs: number, lasts: number): number => (id === "mark-lasts" ? lasts : phase === "pattern" ? 1 : pairs);

/** Minutes of a step done so often, as they are planned and told: whole and never nothing. */
export const wholeMinutes = (minutes: number, times: number): number => Math.max(1, Math.ceil(minutes * times - 1e-9));

/** Most that is believed of one phase: a hundred hours. */
const mostMinutes = 6000;

/** Minutes of each step and phase for one pair; `said` are the maker's own for whole phases, as she wrote them ("90", "1.5 h", "1:30"). */
export function stepMinutes(steps: readonly Step[], said: MakingSaid["minutes"] = {}): StepMinutes {
  const findings: Finding[] = [];
  const own = new Map<Phase, number>();
  for (const [key, text] of Object.entries(said)) {
    const phase = phases.find((p) => p === key);
    if (!phase) findings.push(finding("minutes-no-phase", { phase: key }));
    else if (String(text).trim() !== "") {
      const minutes = readMinutes(text);
      if (typeof minutes === "number" && minutes > 0 && minutes <= mostMinutes) own.set(phase, minutes);
      else findings.push(finding("minutes-unread", { phase, text: String(text), ...(minutes === "ambiguous" && { ambiguous: true }) }));
    }
  }
  const usual = new Map<Phase, number>();
  for (const step of steps) usual.set(step.phase, (usual.get(step.phase) ?? 0) + step.minutes);
  const factor = (phase: Phase): number => (own.has(phase) && usual.get(phase)! > 0 ? own.get(phase)! / usual.get(phase)! : 1);
  return {
    of: new Map(steps.map((step) => [step.id, step.minutes * factor(step.phase)])),
    byPhase: phases.filter((phase) => usual.has(phase)).map((phase) => ({ phase, minutes: usual.get(phase)! * factor(phase) })),
    findings,
  };
}

/** Minutes of "90", "90 min", "1.5 h", "1½ hours", "1:30" and "1 h 30"; "ambiguous" of "1,500", which may be two things; nothing where that is no time. */
export function readMinutes(text: Written): number | "ambiguous" | undefined {
  const plain = String(text).trim().toLowerCase();
  const inHours = /^(\d+)\s*(?::|h|hrs?|hours?)\s*(\d{1,2})\s*(?:m|min|mins|minutes)?$/.exec(plain);
  if (inHours) return Number(inHours[2]) < 60 ? 60 * Number(inHours[1]) + Number(inHours[2]) : undefined;
  const [, number, unit = ""] = /^([^\p{L}]+?)\s*(m|min|mins|minutes?|h|hrs?|hours?)?$/u.exec(plain) ?? [];
  if (number === undefined) return undefined;
  if (readFigure(number).wrong === "ambiguous") return "ambiguous";
  const read = readQuantity(typeof text === "number" ? text : number);
  return "wrong" in read ? undefined : read.value * (unit.startsWith("h") ? 60 : 1);
}
