/** Which photograph is looked at: chosen under the picture, or by going to a mark from the column. */
let shown: string | undefined;
const ears = new Set<() => void>();

export const shownPhoto = {
  listen: (ear: () => void): (() => void) => {
    ears.add(ear);
    return () => void ears.delete(ear);
  },
  look: (): string | undefined => shown,
  show: (name: string): void => {
    shown = name;
    for (const ear of ears) ear();
  },
};
