/** What the picture of the station Leather shows. */
export const leatherSights = ["upper", "lining", "laid", "test"] as const;
export type LeatherSight = (typeof leatherSights)[number];

export const sightWords: Readonly<Record<LeatherSight, string>> = {
  upper: "the upper’s leather",
  lining: "the lining’s leather",
  laid: "how the pieces are laid",
  test: "how a strip is tested",
};
