import type { ReactElement } from "react";
import type { Cost } from "#making/money/cost.ts";
import { earnedWords, isWhole, leftOutWords, sumWords } from "#making/money/cost-words.ts";
import type { Making } from "#making/making.ts";
import { listed } from "#base/listed.ts";
import { fewOf } from "../state/listed.ts";
import { amountOf } from "../state/list-words.ts";
import { hours, money } from "../state/making-words.ts";
import { MoneyTape } from "./money-tape.tsx";

/** What one pair costs, drawn and told: where the money goes, the hours, what an hour earns, and what dearer skins change. */
export function MakingCost({ making }: { readonly making: Making }): ReactElement {
  const { cost } = making;
  const leftOut = leftOutWords(cost, (names) => fewOf(names, 6));
  if (cost.total <= 0) {
    return (
      <section className="making-page">
        <h2>What one pair costs</h2>
        <p>No price is written yet, so nothing can be added up. Write in the column what you pay, what an hour costs and what you ask; each number changes the drawing here at once.</p>
        <Hours cost={cost} />
      </section>
    );
  }
  return (
    <section className="making-page">
      <h2>{sumWords(cost)}</h2>
      {leftOut !== undefined && <p className="follows"><b>{leftOut}</b></p>}
      <MoneyTape cost={cost} />
      <Earned cost={cost} />
      <Dearer cost={cost} />
      <Materials making={making} />
      <Hours cost={cost} />
    </section>
  );
}

function Earned({ cost }: { readonly cost: Cost }): ReactElement {
  const { minutes, currency, rate } = cost, earned = earnedWords(cost);
  if (earned === undefined) return <p>Write what you ask for a pair, and it is told what an hour earns, and what is left where nothing is left out.</p>;
  return <p>{earned} An hour is one of {hours(minutes)}{rate !== undefined && `; you reckon with ${money(rate, currency)}`}.</p>;
}

function Dearer({ cost }: { readonly cost: Cost }): ReactElement | null {
  const { skinsDearer, currency } = cost;
  const { more, total, goods } = skinsDearer;
  if (more <= 0) return null;
  return (
    <p>
      Were skins a tenth dearer ({listed(goods)}), the pair would cost {isWhole(cost) && `${money(total, currency)}, `}{money(more, currency)} more.
      {isWhole(cost) && skinsDearer.asked !== undefined && <> To have as much left you would ask {money(skinsDearer.asked, currency)}.</>}
    </p>
  );
}

/** Part by part what goes into it, the dearest part first. */
function Materials({ making: { cost, needs } }: { readonly making: Making }): ReactElement {
  const parts = cost.shares.filter(({ part }) => part !== "work" && part !== "overhead");
  return (
    <section aria-label="Material of one pair">
      <h3>Material, {money(cost.material, cost.currency)}</h3>
      <ul className="parts">
        {parts.map(({ part, cost: sum }) => (
          <li key={part}>
            <p className="thing"><b>{part}</b><span className="to-buy">{money(sum, cost.currency)}</span></p>
            <p className="follows">
              {cost.lines.filter((l) => l.part === part && l.cost !== undefined).map((l) => {
                const need = needs.find((n) => n.good === l.good);
                return `${l.good}${need ? `, ${amountOf(need, l.amount)}` : ""}: ${money(l.cost!, cost.currency)}`;
              }).join("; ")}.
            </p>
          </li>
        ))}
      </ul>
    </section>
  );
}

function Hours({ cost }: { readonly cost: Cost }): ReactElement {
  const most = Math.max(1, ...cost.work.map((w) => w.minutes));
  return (
    <section aria-label="Hours of one pair">
      <h3>Your hands, {hours(cost.minutes)}{cost.rate !== undefined && `, ${money(cost.workCost, cost.currency)}`}</h3>
      <ul className="parts">
        {cost.work.map(({ phase, minutes, cost: c }) => (
          <li key={phase}>
            <p className="thing"><span>{phase}</span><span className="to-buy">{hours(minutes)}{c !== undefined && <span className="follows"> {money(c, cost.currency)}</span>}</span></p>
            <span className="length-of" style={{ width: `${(100 * minutes) / most}%` }} aria-hidden="true" />
          </li>
        ))}
      </ul>
      <p className="follows">Hands on, for one who has made some. What dries and rests is not counted here; it stands with the steps and in the calendar.</p>
    </section>
  );
}
