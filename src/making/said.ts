/**
 * What the maker said about making and money, as she wrote it: texts like "12,50" or "1/2 m2" are read (and judged) where they are used, so
 * that a slip in one field is told at that field and nothing else is lost. Numbers may stand as numbers in a job written by hand.
 */
export type Written = string | number;

/** A price for an amount: 24.50 for "1 ft2", 6 for "1000 m", 18 for "1 kg", 9 for "200 pieces". Without `for` it is for one of the good's usual unit. */
export interface PriceSaid {
  readonly price: Written;
  readonly for?: string;
}

/** When a step was ticked off on each shoe: local time as "2026-12-01T19:40". */
export interface StepDone {
  readonly left?: string;
  readonly right?: string;
}

/** All that is said of making. Keys of goods and steps are their ids (goods.ts, the steps); one that is not known is told, not refused. */
export interface MakingSaid {
  /** How many pairs are made together; one where nothing is said. */
  readonly pairs?: Written;
  /** Sign or short name put behind amounts of money. */
  readonly currency?: string;
  readonly prices?: Readonly<Record<string, PriceSaid>>;
  /** What lies on the shelf, by good: "0.4 m2", "300 m", "2 pairs". */
  readonly shelf?: Readonly<Record<string, Written>>;
  /** Size of one skin, sheet or bend as it is bought, by good: "6 ft2". */
  readonly skins?: Readonly<Record<string, Written>>;
  /** Minutes of hands-on work for one pair, by phase, where the maker knows her own. */
  readonly minutes?: Readonly<Record<string, Written>>;
  /** Money for an hour's work. */
  readonly rate?: Written;
  /** Money for one pair beside material and work: rent, tools, light. */
  readonly overhead?: Written;
  /** What is asked for a pair. */
  readonly asked?: Written;
  /** How many pairs of lasts of this size there are; one where nothing is said. With fewer than pairs, lasting goes in rounds. */
  readonly lasts?: Written;
  /** What soles and margins are stuck with: "contact" (solvent) or "water-based"; contact where nothing is said. */
  readonly cement?: string;
  /** First day of work, "2026-12-01". */
  readonly start?: string;
  /** When the maker works: "Tue 19:00-21:30, Sat 9:00-13:00". */
  readonly sessions?: string;
  readonly done?: Readonly<Record<string, StepDone>>;
}
