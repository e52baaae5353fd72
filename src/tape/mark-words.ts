/** A mark as the maker calls it: "toe, inner side", "seat of the bottom". */
export const markWords = (mark: string): string =>
  mark
    .replace(/Medial$/, ", inner side")
    .replace(/Lateral$/, ", outer side")
    .replace(/^bottom([A-Z]\w*)/, (_, name: string) => `${name.toLowerCase()} of the bottom`);
