import type { MakingInput } from "#making/input.ts";
import type { Step } from "#making/steps/step.ts";
import { stepsOf } from "#making/steps/steps.ts";
import { makingInput, type OwnChoices } from "./making-pairs.ts";
import { tapedInput } from "./making-taped.ts";

/** A pair (invented) with its plan. */
export interface Planned {
  readonly input: MakingInput;
  readonly steps: readonly Step[];
  /** The step, which must be in the plan. */
  readonly step: (id: string) => Step;
  readonly has: (id: string) => boolean;
}

/** With heights of the sides, as every pair on a last has them. */
const withSides = (input: MakingInput): MakingInput => ({ ...input, ends: { ...input.ends, innerHeightMm: 40.5, outerHeightMm: 37 } });

export function planOf(input: MakingInput): Planned {
  const steps = stepsOf(input);
  const step = (id: string): Step => {
    const found = steps.find((one) => one.id === id);
    if (!found) throw new Error(`no step ${id}`);
    return found;
  };
  return { input, steps, step, has: (id) => steps.some((one) => one.id === id) };
}

/** Choices of the pairs that the tests plan: every cut, seam, edge, lining, top of the back seam, sock and extra is in one of them. */
export const choicesOf = {
  usual: {},
  added: { parts: { cut: "quarters", seam: "lapped", lining: "one", strap: true, bow: true, toeCap: true, backStrip: true, sideLining: true, sock: "heel" }, shell: { edge: "bound", counterMm: 2 } },
  inner: { parts: { cut: "inner-seam", seam: "butted", gore: true, sock: "half" }, shell: { edge: "raw" } },
  bagged: { parts: { cut: "quarters", seam: "closed", backSeam: "butted", strap: true }, shell: { edge: "bagged" } },
  wrapped: { parts: { cut: "inner-seam", seam: "closed" }, shell: { edge: "wrapped" } },
  tail: { parts: { backTop: "dog-tail" }, shell: { edge: "folded", counterMm: 0 }, pieces: { toePuffMm: 0 } },
  notch: { parts: { backTop: "notch", cut: "quarters", seam: "lapped" }, pieces: { lapFoldMm: 4 } },
} satisfies Readonly<Record<string, OwnChoices>>;

export type PlannedName = keyof typeof choicesOf | "taped" | "taped, no bottom";
export const plannedNames: readonly PlannedName[] = [...(Object.keys(choicesOf) as (keyof typeof choicesOf)[]), "taped", "taped, no bottom"];

const made = new Map<PlannedName, Planned>();

/** Made once in a file of tests. */
export function planned(name: PlannedName): Planned {
  const known = made.get(name);
  if (known) return known;
  const plan = planOf(name === "taped" || name === "taped, no bottom" ? tapedInput(name === "taped", planned("usual").input) : withSides(makingInput(choicesOf[name])));
  made.set(name, plan);
  return plan;
}

/** All that a step says of the work. */
export const textOf = ({ title, todo, right, fails, wait }: Step): string => [title, ...todo, ...right, ...fails, wait?.what ?? ""].join("\n");
