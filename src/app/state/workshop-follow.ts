import { alike, isTree, type Tree } from "./alike.ts";
import type { History } from "./history.ts";
import { sameButMaking } from "./same-but-making.ts";
import { workshopOf, type WorkshopSaid } from "./workshop.ts";

/** Her own workshop after one change of a pair: only what was changed there changes here, for the pair may hold prices from elsewhere. */
export function followed(own: WorkshopSaid | undefined, before: WorkshopSaid, after: WorkshopSaid): WorkshopSaid {
  return own === undefined ? after : (carried(own, before, after) as WorkshopSaid);
}

function carried(own: Tree, before: Tree, after: Tree): Tree {
  const keys = new Set([...Object.keys(own), ...Object.keys(after)]);
  const entries = [...keys].flatMap((key): readonly [string, unknown][] => {
    const [was, is, mine] = [before[key], after[key], own[key]];
    if (alike(was, is)) return mine === undefined ? [] : [[key, mine]];
    // A price goes as a whole, with the amount it is for.
    const whole = !isTree(is) || "price" in is;
    const next = whole ? is : carried(isTree(mine) ? mine : {}, isTree(was) ? was : {}, is);
    return next === undefined ? [] : [[key, next]];
  });
  return Object.fromEntries(entries);
}

/** A word about the workshop, by what it said before and says after. */
export interface WorkshopStep {
  readonly before: WorkshopSaid;
  readonly after: WorkshopSaid;
}

/**
 * The workshop before and after, where a step of the work (made, taken back or done again) was a word about the workshop. An opened file
 * brings its own and changes nothing of hers; nor does it when a pair takes hers, or gives them back, or when the work begins anew.
 */
export function workshopStep(before: History, after: History): WorkshopStep | undefined {
  const [from, to] = [before.now.job, after.now.job];
  if (from.making === to.making || !sameButMaking(from, to)) return undefined;
  const step = stepBetween(before, after);
  if (!step || step.brought) return undefined;
  const [was, is] = [workshopOf(from), workshopOf(to)];
  return alike(was, is) ? undefined : { before: was, after: is };
}

/** The step that was made, gone on with, done again or taken back; nothing where neither history came from the other, and so no hand wrote anything. */
function stepBetween(before: History, after: History): History["now"] | undefined {
  const last = before.past.at(-1);
  if (last !== undefined && after.now === last) return before.now;
  const made = after.past.at(-1) === before.now;
  const wentOn = after.gesture !== undefined && after.gesture === before.gesture && last !== undefined && after.past.at(-1) === last;
  return made || wentOn ? after.now : undefined;
}
