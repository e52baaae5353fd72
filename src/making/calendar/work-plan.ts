import type { Step } from "../steps/step.ts";
import { inRounds, type Share, type Work } from "./lasts-rounds.ts";
import { timesDone, wholeMinutes } from "./step-minutes.ts";
import { restAfter, type StepLinks, type WorkAsked } from "./step-links.ts";
import { groupLinks, ordered, turned, type Links, type Most } from "./work-links.ts";

/** The work as the calendar sees it: each step, or each step for some of the pairs, by its place in the plan; minutes. */
export interface WorkPlan {
  readonly steps: readonly Step[];
  readonly pairs: number;
  /** Pairs of lasts, no more than pairs. */
  readonly lasts: number;
  /** How often the lasts go round; 1 where every pair has its own. */
  readonly rounds: number;
  /** Which pairs go through each. */
  readonly share: readonly Share[];
  /** Hands-on, for one pair; not rounded. */
  readonly minutes: readonly number[];
  /** Rest that is planned after a step. */
  readonly rest: readonly number[];
  /** When a step can begin at the soonest, minutes since 1970. */
  readonly soonest: readonly number[];
  readonly before: Links;
  readonly after: Links;
  readonly most: readonly Most[];
  /** What goes together, each group in its order and the groups in theirs: one step, or a chain that has to be done in one session. */
  readonly groups: Links;
}

/** The steps laid out for all pairs: in one go, or round by round where lasts are wanting. */
export function workPlan({ steps, pairs, lasts, minutesOf, soonest }: WorkAsked, { before, next, groups, lasted, shares }: StepLinks): WorkPlan {
  const whole: Share = { first: 0, pairs };
  const works: readonly Work[] = shares.length > 1 ? inRounds(before, lasted, shares, whole) : steps.map((_, step) => ({ step, share: whole, before: before[step]! }));
  const places = new Map(works.map(({ step, share: { round = "" } }, k) => [`${step} ${round}`, k]));
  const placeOf = (step: number, { round }: Share): number => (places.get(`${step} ${round ?? ""}`) ?? places.get(`${step} `))!;
  // A group is on the lasts as a whole or not at all.
  const grouped = groups.flatMap((group) => (shares.length > 1 && lasted.has(group[0]!) ? shares : [whole]).map((share) => group.map((k) => placeOf(k, share))));
  const links = works.map((work) => work.before);
  const of = <T>(value: (step: Step, k: number) => T): readonly T[] => works.map(({ step }) => value(steps[step]!, step));
  return {
    steps: of((step) => step), pairs, lasts, rounds: Math.max(1, shares.length), share: works.map(({ share }) => share),
    minutes: of(({ id, minutes }) => minutesOf.get(id) ?? minutes), rest: of(restAfter), soonest: of((_, k) => soonest[k]!),
    before: links, after: turned(links),
    most: works.map(({ step, share }) => (next[step] === undefined ? undefined : { min: next[step].min, next: placeOf(next[step].next, share) })),
    groups: ordered(groupLinks(grouped, links)).map((g) => grouped[g]!),
  };
}

/** Minutes between a step's end and the begin of one that comes after it. Whoever waits for lasts waits for no rest of what has left them. */
export const restBetween = ({ share, rest }: WorkPlan, step: number, next: number): number => {
  const [a, b] = [share[step]!.round, share[next]!.round];
  return a !== undefined && b !== undefined && a !== b ? 0 : rest[step]!;
};

/** Minutes of a step for so many pairs. */
export function minutesFor({ steps, minutes, lasts }: WorkPlan, step: number, pairs: number): number {
  return wholeMinutes(minutes[step]!, timesDone(steps[step]!, pairs, lasts));
}

/** Of a step for those pairs that go through it together. */
export const minutesOf = (plan: WorkPlan, step: number): number => minutesFor(plan, step, plan.share[step]!.pairs);

/** Of all steps and pairs. */
export const allMinutes = (plan: WorkPlan): number => plan.steps.reduce((sum, _, k) => sum + minutesOf(plan, k), 0);
