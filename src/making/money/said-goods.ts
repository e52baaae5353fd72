import { finding, type Finding } from "#base/findings.ts";
import { goodIds, type GoodId } from "../goods.ts";
import { goodMeant } from "./good-meant.ts";
import { plainName } from "./plain-name.ts";
import type { MoneyField } from "#base/sentences/money.ts";

/** What the maker wrote by good, in the order of the goods; names that are no good are told with those most like them. */
export function saidByGood<T>(said: Readonly<Record<string, T>> | undefined, field: MoneyField, findings: Finding[]): ReadonlyMap<GoodId, T> {
  const names = Object.keys(said ?? {});
  for (const name of names.filter((one) => !isGood(one))) findings.push(finding("money-unknown-good", { field, name, ...goodMeant(name) }));
  return new Map(goodIds.filter((good) => said !== undefined && Object.hasOwn(said, good)).map((good) => [good, said![good]!]));
}

const isGood = (name: string): name is GoodId => (goodIds as readonly string[]).includes(name);

/** The good that is meant by a name written by hand: "Upper leather", "heel-nails"; nothing where there is none. */
export function goodNamed(written: string): GoodId | undefined {
  const name = plainName(written);
  return goodIds.find((good) => [plainName(good), `${plainName(good)}s`].includes(name) || plainName(good) === `${name}s`);
}
