/** What the maker's hand moves in the picture of the first station: it turns the last, or puts something right on it. */
export const hands = ["last", "feather", "points"] as const;
export type Hand = (typeof hands)[number];
export const handWords: Readonly<Record<Hand, string>> = { last: "the last", feather: "the feather line", points: "the points" };
