import { phases, type Phase, type Step } from "#making/steps/step.ts";

/** Usual minutes of hands-on work for one pair, by the stretches of the work. */
export const usualMinutes = (steps: readonly Pick<Step, "phase" | "minutes">[]): Readonly<Partial<Record<Phase, number>>> =>
  Object.fromEntries(phases.map((phase) => [phase, steps.reduce((sum, s) => sum + (s.phase === phase ? s.minutes : 0), 0)]));
