import { Refusal } from "#base/refusal.ts";
import { alike } from "./alike.ts";
import { tell } from "./spots.ts";
import { departs, type WorkshopSaid } from "./workshop.ts";
import { nothingKept, readWorkshop, writeWorkshop, type WorkshopKept } from "./workshop-file.ts";
import { followed, type WorkshopStep } from "./workshop-follow.ts";

/** A change of what is kept, made on whatever the browser is found to hold; it is owed until the browser holds it. */
export interface Owed {
  readonly make: (kept: WorkshopKept) => WorkshopKept;
  /** It says all, and so may take the place of what cannot be read. */
  readonly whole?: true;
}

export const alongWith = ({ before, after }: WorkshopStep): Owed => ({ make: ({ own, former }) => ({ own: followed(own, before, after), former }) });

/** Those of a pair become hers; what they take the place of can be had back. */
export const keepThese = (mine: WorkshopSaid): Owed => ({
  whole: true,
  make: ({ own, former }) => ({ own: mine, former: [...(own ? [own] : []), ...former].filter((f) => departs(f, mine) !== undefined) }),
});

/** The former ones are hers again, and those that were wait behind all others. */
export const haveBack: Owed = {
  make: (kept) => {
    const [back, ...rest] = kept.former;
    return back ? { own: back, former: [...rest, ...(kept.own ? [kept.own] : [])] } : kept;
  },
};

export const letGo = (of: WorkshopSaid): Owed => ({ make: ({ own, former }) => ({ own, former: former.filter((f) => !alike(f, of)) }) });

export const withOwed = (kept: WorkshopKept, owed: readonly Owed[]): WorkshopKept => owed.reduce((so, { make }) => make(so), kept);

/** What was found in the browser, and what is to be done about it. */
export interface Found {
  /** Nothing where it cannot be read and nothing that is owed may take its place. */
  readonly held?: WorkshopKept;
  /** To be written. */
  readonly text?: string;
  /** The text that cannot be read, and why it cannot. */
  readonly unreadable?: { readonly text: string; readonly why: string };
}

export function found(text: string | undefined, owed: readonly Owed[]): Found {
  const over = (held: WorkshopKept): Found => ({ held, ...(owed.length > 0 && { text: writeWorkshop(withOwed(held, owed)) }) });
  if (text === undefined) return over(nothingKept);
  try {
    return over(readWorkshop("what this browser keeps of your prices and shelf", text));
  } catch (error) {
    if (!(error instanceof Refusal)) throw error;
    return { ...(owed.some(({ whole }) => whole) && over(nothingKept)), unreadable: { text, why: tell(error.finding) } };
  }
}
