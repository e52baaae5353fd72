import type { ReactElement } from "react";
import { earnedWords, leftOutWords, sumMoney, sumName, sumParts, sumWords } from "#making/money/cost-words.ts";
import type { Making } from "#making/making.ts";
import type { Desk } from "../desk.ts";
import { setMaking } from "../state/making-edits.ts";
import { hours } from "../state/making-words.ts";
import { fewOf } from "../state/listed.ts";
import { WrittenField, WrittenSentence } from "./written-field.tsx";

/** What an hour costs, what is put on every pair, what is asked; and what follows from it. */
export function MakingMoney({ desk, making }: { readonly desk: Desk; readonly making: Making }): ReactElement {
  const { job } = desk;
  const { currency, rate, overhead, asked } = job.making;
  const set = (key: "currency" | "rate" | "overhead" | "asked") => (text: string) => setMaking(job, { [key]: text === "" ? undefined : text });
  return (
    <section aria-label="Money">
      <h3>Money</h3>
      <WrittenSentence spots={["making currency", "making rate", "making overhead", "making asked"]}>
        Money is in <WrittenField desk={desk} spot="making currency" label="currency, as you write it" value={currency} edit={set("currency")} what="the currency" hint="say, EUR" letters={8} keys="text" />.
        An hour of your work costs <WrittenField desk={desk} spot="making rate" label="what an hour of your work costs" value={rate} edit={set("rate")} what="the hour’s pay" hint="not said" />,
        rent, tools and light <WrittenField desk={desk} spot="making overhead" label="overhead: rent, tools and light, for one pair" value={overhead} edit={set("overhead")} what="the overhead" hint="not said" /> a pair.
        You ask <WrittenField desk={desk} spot="making asked" label="price asked for one pair" value={asked} edit={set("asked")} what="the price asked" hint="not said" /> for a pair.
      </WrittenSentence>
      <MoneyFollows making={making} />
    </section>
  );
}

/** What one pair costs, as it is told to those who hear the page; nothing while nothing is known of it. */
export function costSpoken({ cost }: Pick<Making, "cost">): string {
  if (cost.total === 0) return "";
  return [`${sumWords(cost)}.`, earnedWords(cost)].filter((words) => words !== undefined).join(" ");
}

/** What one pair costs, in a sentence or two. */
function MoneyFollows({ making: { cost, needs } }: { readonly making: Making }): ReactElement {
  const priced = needs.length - cost.unpriced.length;
  if (priced === 0 && cost.rate === undefined && cost.overhead === 0) return <p className="follows">No price is written yet. Nobody but you knows what you pay: write it below, at each thing that this pair takes.</p>;
  const told = [earnedWords(cost), leftOutWords(cost, fewOf)].filter((words) => words !== undefined);
  return (
    <p className="follows">
      {sumName(cost)}{cost.rate === undefined && ":"} <b>{sumMoney(cost)}</b> ({sumParts(cost)}); {hours(cost.minutes)} at the bench. {told.join(" ")}
    </p>
  );
}
