import type { HazardId } from "#making/care/hazards.ts";
import type { Making } from "#making/making.ts";
import type { MakingSaid } from "#making/said.ts";
import { lastsOf } from "#making/calendar/lasts.ts";
import { cementOf, type Cement } from "#making/needs/cement-choice.ts";

export const cementWords: Readonly<Record<Cement, string>> = {
  "contact cement": "contact cement, with solvent",
  "water-based cement": "water-based cement",
};

/** How each is written in a job; contact is what is taken where nothing is said. */
export const cementSaid: Readonly<Record<Cement, string | undefined>> = { "contact cement": undefined, "water-based cement": "water-based" };

const asks: Readonly<Record<Cement, string>> = {
  "contact cement": "It is dry in minutes and holds at once, and its solvent asks for much care.",
  "water-based cement": "It holds little solvent or none; it dries longer, until it is clear, and the steps and the calendar wait for it.",
};

const hazards: Readonly<Record<Cement, HazardId>> = { "contact cement": "solvent cement", "water-based cement": "water-based glue" };

/** What the cement that was chosen asks of the maker, with the caution's own line. */
export function cementFollows(said: MakingSaid, { cautions }: Pick<Making, "cautions">): string {
  const cement = cementOf(said);
  const care = cautions.find(({ hazard }) => hazard === hazards[cement]);
  return care ? `${asks[cement]} ${care.short}` : asks[cement];
}

/** How the work goes round with so many lasts. */
export function lastsWords(said: MakingSaid, { pairs }: Pick<Making, "pairs">): string {
  const lasts = lastsOf(said, pairs);
  if (lasts >= pairs) return "Every pair has lasts of its own: all can be lasted together.";
  return `${lasts === 1 ? "One pair is" : `${lasts} pairs are`} lasted at a time; the next ${lasts === 1 ? "waits" : "wait"} until the lasts are slipped.`;
}
