import { BenchTime, type Span } from "./bench-time.ts";
import { layChain, type Batch } from "./fit-chain.ts";
import { groupLinks, type Links } from "./work-links.ts";
import { minutesOf, restBetween, type WorkPlan } from "./work-plan.ts";

/** A stretch of one step in one session. */
export interface Laid extends Span {
  readonly step: number;
  readonly session: number;
  /** The first of the pairs, from 0, and how many. */
  readonly first: number;
  readonly pairs: number;
}

/** How the work is laid. */
export interface Manner {
  /**
   * Which of the groups whose forerunners are laid is laid next: the most urgent, as early as it fits into what is still free, so that
   * shorter work falls into the gaps while something dries; the one that can begin soonest, as one works who never looks ahead; or the
   * most urgent after all that was laid before it, idle while something dries.
   */
  readonly next: "urgent" | "soonest" | "idle";
  /** By step: the higher comes first. */
  readonly urgency: readonly number[];
  /** Steps are cut only where no session holds them. */
  readonly whole: boolean;
}

/** Nothing shorter is begun of a step that goes on later, and nothing shorter is left of it. */
export const leastStintMin = 10;

/** Chains cut into batches, beside the plan's groups; none for a single step. */
export type Batches = readonly (readonly Batch[] | undefined)[];

/** Lays the groups one by one into the sessions; nothing where these do not hold them. */
export function layWork(plan: WorkPlan, batches: Batches, sessions: readonly Span[], manner: Manner): readonly Laid[] | undefined {
  const time = new BenchTime(sessions);
  const laid: Laid[] = [];
  /** When each step ends, and when all that is laid is over, rests with it. */
  const ends = plan.steps.map(() => -Infinity);
  let over = -Infinity;
  const begin = (group: readonly number[]): readonly number[] =>
    group.map((k) => plan.before[k]!.reduce((latest, j) => (group.includes(j) ? latest : Math.max(latest, ends[j]! + restBetween(plan, j, k))), manner.next === "idle" ? Math.max(plan.soonest[k]!, over) : plan.soonest[k]!));
  const place = (g: number, batch: number, fromSession: number): readonly Laid[] | undefined => {
    const group = plan.groups[g]!;
    return batches[g] ? layBatch(batches[g][batch]!, time, fromSession, begin(group)) : layStep(plan, group[0]!, time, begin(group)[0]!, manner.whole);
  };
  const { waitsFor, urgent } = turns(plan, manner);
  const open = new Set(plan.groups.keys());
  while (open.size > 0) {
    const able = [...open].filter((g) => waitsFor[g]!.every((other) => !open.has(other))).toSorted((a, b) => urgent[b]! - urgent[a]!);
    const begins = manner.next === "soonest" && able.length > 1 ? able.map((g) => place(g, 0, 0)?.[0]!.from ?? Infinity) : [0];
    const g = able[begins.indexOf(Math.min(...begins))]!;
    open.delete(g);
    let from = 0;
    for (let batch = 0; batch < (batches[g]?.length ?? 1); batch++) {
      const parts = place(g, batch, from);
      if (!parts) return undefined;
      from = parts[0]!.session;
      for (const part of parts) {
        time.take(part.session, part);
        laid.push(part);
        ends[part.step] = Math.max(ends[part.step]!, part.to);
        over = Math.max(over, part.to + plan.rest[part.step]!);
      }
    }
  }
  return laid.toSorted((a, b) => a.from - b.from);
}

/** Which groups come before each, and how urgent each is. */
function turns(plan: WorkPlan, { urgency }: Manner): { readonly waitsFor: Links; readonly urgent: readonly number[] } {
  return {
    waitsFor: groupLinks(plan.groups, plan.before),
    urgent: plan.groups.map((group) => Math.max(...group.map((k) => urgency[k]!))),
  };
}

/** One step for all pairs, cut where it has to be. */
function layStep(plan: WorkPlan, step: number, time: BenchTime, soonest: number, whole: boolean): readonly Laid[] | undefined {
  const { first, pairs } = plan.share[step]!;
  let left = minutesOf(plan, step);
  const parts: Laid[] = [];
  for (let session = time.sessionAfter(soonest); session < time.sessions.length; session++) {
    const { from: begin, to: end } = time.sessions[session]!;
    for (const gap of time.free(session)) {
      const from = Math.max(gap.from, soonest);
      const span = gap.to - from;
      const cut = left <= span ? left : whole && left <= end - begin ? 0 : Math.min(span, left - leastStintMin);
      if (cut < Math.min(left, leastStintMin)) continue;
      parts.push({ step, session, from, to: from + cut, first, pairs });
      left -= cut;
      if (left === 0) return parts;
    }
  }
  return undefined;
}

/** One batch of a chain, in the first session that holds it. */
function layBatch(batch: Batch, time: BenchTime, fromSession: number, soonest: readonly number[]): readonly Laid[] | undefined {
  const work = batch.lasts.reduce((sum, min) => sum + min, 0);
  for (let session = Math.max(fromSession, time.sessionAfter(Math.min(...soonest))); session < time.sessions.length; session++) {
    const free = time.free(session);
    const spans = free.reduce((sum, gap) => sum + gap.to - gap.from, 0) < work ? undefined : layChain(batch, free, soonest);
    if (spans) return spans.map((span, i) => ({ ...span, step: batch.group[i]!, session, first: batch.first, pairs: batch.pairs })).toSorted((a, b) => a.from - b.from);
  }
  return undefined;
}
