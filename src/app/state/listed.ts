import { listed } from "#base/listed.ts";

/** The first of many: "a, b, c and 20 others". */
export const fewOf = (names: readonly string[], most = 3): string => (names.length <= most + 1 ? listed(names) : `${names.slice(0, most).join(", ")} and ${names.length - most} others`);

/** Names of pieces one after the other: net cards, whose names hold a comma of their own, last and by the pieces that they belong to. */
export function listedPieces(names: readonly string[]): string {
  const cards = names.filter((n) => n.endsWith(", net")).map((n) => n.slice(0, -", net".length));
  const others = names.filter((n) => !n.endsWith(", net")).map((n) => n.replace(",", ""));
  return listed([...others, ...(cards.length > 0 ? [`the net card${cards.length > 1 ? "s" : ""} of ${listed(cards)}`] : [])]);
}
