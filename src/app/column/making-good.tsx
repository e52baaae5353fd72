import type { ReactElement } from "react";
import { capital } from "#base/listed.ts";
import type { GoodId } from "#making/goods.ts";
import type { Need } from "#making/need.ts";
import { measureOf } from "#making/amounts/good-measures.ts";
import { usualAmount } from "#making/money/usual-amount.ts";
import type { Desk } from "../desk.ts";
import { goodWords } from "../state/good-words.ts";
import { amountOf } from "../state/list-words.ts";
import { setMakingAt, setPrice } from "../state/making-edits.ts";
import type { MakingSpot } from "../state/spot.ts";
import { WrittenField, WrittenSentence } from "./written-field.tsx";

export const spotsOfGood = ({ good }: Pick<Need, "good">): readonly MakingSpot[] => [`making prices ${good}`, `making for ${good}`, `making shelf ${good}`, `making skins ${good}`];

interface MakingGoodProps {
  readonly desk: Desk;
  readonly good: GoodId;
  /** Nothing where this pair does not use it. */
  readonly need: Need | undefined;
}

/** What one thing costs, how it is bought, and how much of it lies on the shelf. */
export function MakingGood({ desk, good, need }: MakingGoodProps): ReactElement {
  const measure = measureOf[good];
  const { prices = {}, shelf = {}, skins = {} } = desk.job.making;
  const price = prices[good];
  const { whole, several } = goodWords[good];
  return (
    <WrittenSentence spots={spotsOfGood({ good })} follows={need ? <>{amountOf(need, need.gross)} for one pair{need.waste ? ", with what falls away" : ""}.</> : "Not used in this pair."}>
      <b>{capital(good)}</b> {several ? "cost" : "costs"}{" "}
      <WrittenField desk={desk} spot={`making prices ${good}`} label={`price of the ${good}`} value={price?.price} edit={(text) => setPrice(desk.job, good, { price: text })} what={`the price of the ${good}`} hint="no price" />
      {" "}for <WrittenField desk={desk} spot={`making for ${good}`} label={`amount that the price of the ${good} is for`} value={price?.for} edit={(text) => setPrice(desk.job, good, { for: text })} what={`what the price of the ${good} is for`} hint={usualAmount(good, measure, need?.ofLeather)?.words ?? "how much"} keys="text" />;{" "}
      {whole} <WrittenField desk={desk} spot={`making skins ${good}`} label={`${good}: how much ${whole}`} value={skins[good]} edit={(text) => setMakingAt(desk.job, "skins", good, text)} what={`how the ${good} is bought`} hint="not said" keys="text" />,
      {" "}and on the shelf {several ? "lie" : "lies"} <WrittenField desk={desk} spot={`making shelf ${good}`} label={`${good} on the shelf`} value={shelf[good]} edit={(text) => setMakingAt(desk.job, "shelf", good, text)} what={`the ${good} on the shelf`} hint="nothing" keys="text" />.
    </WrittenSentence>
  );
}
