/** A stretch of one step within one session. */
export interface Stint {
  readonly step: string;
  /** Minutes from the session's begin. */
  readonly fromMin: number;
  readonly toMin: number;
  /** 1 of 2 where the same work on the same pairs goes on later. */
  readonly part: number;
  readonly parts: number;
  /** The first of the pairs, from 1, and how many, where not all of them are done in one go. */
  readonly first?: number;
  readonly pairs?: number;
}

/** One time at the bench. */
export interface Session {
  /** "2026-12-01", or "week 1, Tuesday" where no first day is said. */
  readonly date: string;
  /** Minutes from midnight. */
  readonly fromMin: number;
  readonly toMin: number;
  readonly stints: readonly Stint[];
  /** What dries or rests when the session ends, and until when it has to. */
  readonly waits: readonly { readonly step: string; readonly untilDate: string; readonly untilMin: number; readonly first?: number; readonly pairs?: number }[];
}

/** The work of all pairs fitted into the maker's sessions. */
export interface Calendar {
  readonly sessions: readonly Session[];
  /** Day on which the last step is done, and its wait over. */
  readonly ready: { readonly date: string; readonly min: number };
  /** Where there are fewer pairs of lasts than pairs: how many, and in how many rounds what is done on them is done. */
  readonly rounds?: number;
  readonly lasts?: number;
}
