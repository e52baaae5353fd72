import { must } from "#base/bug.ts";

/** For each of a list, which others it hangs together with; by their places. */
export type Links = readonly (readonly number[])[];

/** By when, counted from a step's end, the first step that follows must have begun; that step's place stands beside it. */
export type Most = { readonly min: number; readonly next: number } | undefined;

/** The other way round: what comes after each. */
export function turned(before: Links): Links {
  const after: number[][] = before.map(() => []);
  before.forEach((list, j) => list.forEach((k) => after[k]!.push(j)));
  return after;
}

/** Each after those that come before it, else as they stand in the list. */
export function ordered(before: Links): readonly number[] {
  const after = turned(before);
  const open = before.map((list) => list.length);
  const ready = open.flatMap((n, k) => (n === 0 ? [k] : []));
  const order: number[] = [];
  while (ready.length > 0) {
    const k = ready.splice(ready.indexOf(Math.min(...ready)), 1)[0]!;
    order.push(k);
    for (const j of after[k]!) if (--open[j]! === 0) ready.push(j);
  }
  must(order.length === before.length, "steps that wait for one another");
  return order;
}

/** All that can be reached from each along the links, itself only where a circle leads back. */
export function reached(ways: Links): readonly ReadonlySet<number>[] {
  return ways.map((_, k) => {
    const seen = new Set<number>();
    const open = [k];
    while (open.length > 0) {
      const further = ways[open.pop()!]!.filter((j) => !seen.has(j));
      for (const j of further) seen.add(j);
      open.push(...further);
    }
    return seen;
  });
}

/** Steps bound by what stays open only so long, and all that lies between them, in one group, in their order. */
export function grouped(before: Links, most: readonly Most[]): Links {
  // Bound steps reach one another both ways; whatever reaches such a step and is reached from it must go with it.
  const reach = reached(turned(before).map((list, k) => [...list, ...before[k]!.filter((j) => most[j]?.next === k)]));
  const order = ordered(before);
  const taken = new Set<number>();
  return order.flatMap((k) => {
    if (taken.has(k)) return [];
    const group = order.filter((j) => j === k || (reach[k]!.has(j) && reach[j]!.has(k)));
    for (const j of group) taken.add(j);
    return [group];
  });
}

/** Which groups come before each. */
export function groupLinks(groups: Links, before: Links): Links {
  const groupOf: number[] = [];
  groups.forEach((group, g) => group.forEach((k) => (groupOf[k] = g)));
  return groups.map((group, g) => [...new Set(group.flatMap((k) => before[k]!.map((j) => groupOf[j]!)))].filter((other) => other !== g));
}
