import { Bug } from "#base/bug.ts";
import type { Phase, Step } from "./step.ts";

/** What a step says of itself, beside its place in the work. */
export type Said = Omit<Step, "id" | "phase" | "after">;

/**
 * A step that a pair may have. Its id and what comes before it are the same for all pairs, so that the order of the work hangs on no choice;
 * `say` is missing where this pair has no such step.
 */
export interface MayStep {
  readonly id: string;
  readonly phase: Phase;
  readonly after: readonly string[];
  readonly say?: () => Said;
}

/** The step where `wanted`; else only its place in the order. */
export const may = (id: string, phase: Phase, after: readonly string[], wanted: boolean, say: () => Said): MayStep => ({ id, phase, after, ...(wanted && { say }) });

/** A step that every pair has. */
export const must = (id: string, phase: Phase, after: readonly string[], say: () => Said): MayStep => ({ id, phase, after, say });

/**
 * The steps that this pair has, in the order given. What came after a step that is left out comes after all that this one waited for; what is
 * said already by another step before is not said again. `after` may only name steps that stand before in the list: so the order of the list
 * respects it, and it has no circle.
 */
export function planned(all: readonly MayStep[]): readonly Step[] {
  const stands = new Map<string, readonly string[]>();
  const before = new Map<string, ReadonlySet<string>>();
  const steps: Step[] = [];
  for (const { id, phase, after, say } of all) {
    if (stands.has(id)) throw new Bug(`two steps are called ${id}`);
    const direct = nearest(after.flatMap((one) => standsFor(stands, one, id)), before);
    stands.set(id, say ? [id] : direct);
    if (!say) continue;
    before.set(id, new Set(direct.flatMap((one) => [one, ...before.get(one)!])));
    steps.push({ id, phase, ...say(), after: direct });
  }
  return steps;
}

function standsFor(stands: ReadonlyMap<string, readonly string[]>, one: string, id: string): readonly string[] {
  const found = stands.get(one);
  if (!found) throw new Bug(`${id} comes after ${one}, which does not stand before it`);
  return found;
}

/** Those that none of the others waits for, each once. */
const nearest = (ids: readonly string[], before: ReadonlyMap<string, ReadonlySet<string>>): readonly string[] =>
  [...new Set(ids)].filter((id) => !ids.some((other) => before.get(other)!.has(id)));
