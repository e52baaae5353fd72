import type { Step } from "../steps/step.ts";
import type { Span } from "./bench-time.ts";
import { dealt } from "./lasts-rounds.ts";
import { minutesFor, restBetween, type WorkPlan } from "./work-plan.ts";

/** A chain done for some of the pairs: what has to lie in one session. Its steps are named by their place in the group. */
export interface Batch {
  readonly group: readonly number[];
  /** The first of its pairs, from 0, and how many they are. */
  readonly first: number;
  readonly pairs: number;
  /** Minutes of each of the group's steps. */
  readonly lasts: readonly number[];
  /** Steps of the group before each, and the minutes from their end to its begin. */
  readonly before: readonly (readonly { readonly step: number; readonly rest: number }[])[];
  /** By when after a step's end its follower must have begun. */
  readonly most: readonly ({ readonly min: number; readonly next: number } | undefined)[];
  /** Orders in which the steps can follow one another, the shortest first. */
  readonly orders: readonly (readonly number[])[];
}

/** Orders that are tried of a chain; one of five steps has no more. */
const mostOrders = 120;

/**
 * A chain for so many pairs. While what is later is coated the first dries already, so that with each pair more, or each shoe where
 * the follower is done on one after the other, the time left shrinks by the longer of both steps: rest + (n − 1) · max(a, b) ≤ most.
 */
export function batchOf(plan: WorkPlan, group: readonly number[], pairs: number, first = 0): Batch {
  const before = group.map((k) => plan.before[k]!.flatMap((j) => (group.includes(j) ? [{ step: group.indexOf(j), rest: restBetween(plan, j, k) }] : [])));
  const most = group.map((k) => {
    const to = plan.most[k];
    return to && { min: Math.floor(to.min - laterBy(plan.steps[to.next]!, pairs) * Math.max(plan.minutes[k]!, plan.minutes[to.next]!) + 1e-9), next: group.indexOf(to.next) };
  });
  const batch: Batch = { group, first, pairs, lasts: group.map((k) => minutesFor(plan, k, pairs)), before, most, orders: [] };
  const long = (order: readonly number[]): number => spanOf({ ...batch, orders: [order] }) ?? Infinity;
  const orders = ordersOf(before.map((list) => list.map(({ step }) => step))).map((order) => ({ order, span: long(order) }));
  return { ...batch, orders: orders.filter(({ span }) => span < Infinity).toSorted((a, b) => a.span - b.span).map(({ order }) => order) };
}

/** By how many pairs' work the last of them, or its second shoe, comes after the first. */
const laterBy = ({ shoes }: Step, pairs: number): number => (shoes === "together" ? pairs - 1 : pairs - 0.5);

/** Orders in which everything comes after what is before it, at most {@link mostOrders}; by the steps' places. */
function ordersOf(before: readonly (readonly number[])[]): readonly (readonly number[])[] {
  const orders: number[][] = [];
  const longer = (order: readonly number[]): void => {
    if (order.length === before.length) orders.push([...order]);
    for (let k = 0; k < before.length && orders.length < mostOrders; k++) if (!order.includes(k) && before[k]!.every((j) => order.includes(j))) longer([...order, k]);
  };
  longer([]);
  return orders;
}

/** Where a chain's steps lie, by place, in what is free of one session, so that the last is done soonest; none begins before `soonest`. Nothing where they do not fit. */
export function layChain(batch: Batch, free: readonly Span[], soonest: readonly number[]): readonly Span[] | undefined {
  let best: readonly Span[] | undefined;
  for (const order of batch.orders) {
    const laid = layInOrder(batch, order, free, soonest);
    if (laid && (!best || endOf(laid) < endOf(best))) best = laid;
  }
  return best;
}
const endOf = (spans: readonly Span[]): number => Math.max(...spans.map((s) => s.to));

/**
 * Every step as early as it can be in this order. Where a follower would begin too late, the step it follows is moved later and all are
 * laid again; each move is forced and only ever later, so that what stands at the end is the earliest there is.
 */
function layInOrder({ lasts, before, most }: Batch, order: readonly number[], free: readonly Span[], soonest: readonly number[]): readonly Span[] | undefined {
  const least = [...soonest];
  for (;;) {
    const laid: Span[] = [];
    let time = -Infinity;
    for (const k of order) {
      const from = firstFree(free, before[k]!.reduce((begin, { step, rest }) => Math.max(begin, laid[step]!.to + rest), Math.max(time, least[k]!)), lasts[k]!);
      if (from === undefined) return undefined;
      laid[k] = { from, to: from + lasts[k]! };
      time = laid[k].to;
    }
    const late = most.findIndex((m, k) => m !== undefined && laid[m.next]!.from > laid[k]!.to + m.min);
    if (late < 0) return laid;
    least[late] = laid[most[late]!.next]!.from - most[late]!.min - lasts[late]!;
  }
}

/** Begin of the first stretch of this length that is free. */
function firstFree(free: readonly Span[], soonest: number, lasts: number): number | undefined {
  const gap = free.find(({ from, to }) => Math.max(from, soonest) + lasts <= to);
  return gap && Math.max(gap.from, soonest);
}

/** How long a session must be for one batch, at the least; nothing where no length is enough. */
export function spanOf(batch: Batch): number | undefined {
  const enough = batch.group.reduce((sum, _, k) => sum + batch.lasts[k]! + Math.max(0, batch.most[k]?.min ?? 0, ...batch.before[k]!.map(({ rest }) => rest)), 0);
  const laid = layChain(batch, [{ from: 0, to: enough }], batch.group.map(() => 0));
  return laid && endOf(laid);
}

/** A chain cut into batches of as many pairs as one session and the open time of the cement let; nothing where not even one pair goes. */
export function batchesOf(plan: WorkPlan, group: readonly number[], longestMin: number): readonly Batch[] | undefined {
  const { first, pairs } = plan.share[group[0]!]!;
  const fits = (some: number): boolean => (spanOf(batchOf(plan, group, some)) ?? Infinity) <= longestMin;
  let most = 0;
  while (most < pairs && fits(most + 1)) most++;
  return most === 0 ? undefined : dealt(pairs, most, first).map((share) => batchOf(plan, group, share.pairs, share.first));
}
