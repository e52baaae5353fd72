// What may not be sold to everybody; each with jurisdiction, date and where it was read.

export interface Restriction {
  readonly jurisdiction: string;
  readonly law: string;
  /** When it was looked up. */
  readonly date: string;
  readonly what: string;
  readonly source: string;
}

const reach = { jurisdiction: "European Union", date: "as looked up in November 2026" } as const;

export const restrictions: readonly Restriction[] = [
  {
    ...reach,
    law: "REACH Regulation (EC) 1907/2006, Annex XVII, entry 48",
    what: "adhesives with 0.1 % of toluene by weight or more are not to be sold to the general public",
    source: "question 668 of the European Chemicals Agency (echa.europa.eu)",
  },
  {
    ...reach,
    law: "REACH Regulation (EC) 1907/2006, Annex XVII, entry 57",
    what: "neoprene contact adhesives with 0.1 % of cyclohexane by weight or more are not to be sold to the general public in packs over 350 g; the label must say not to use them where ventilation is poor and not for laying carpet",
    source: "a seller's page that quotes the entry",
  },
];

export function restrictionWords({ jurisdiction, law, date, what, source }: Restriction): string {
  return `${jurisdiction}, ${law}: ${what} (${date}; source: ${source}).`;
}
