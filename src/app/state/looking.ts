import { useMemo, useState } from "react";
import type { EyeName } from "../picture/eyes.ts";
import type { Hand } from "./hand.ts";

interface Look {
  /** Where the last is looked at from; a new object looks from there again. */
  readonly from: { readonly name: EyeName };
  readonly hand: Hand;
  /** What the column and the picture both point at: "pull 0", "point toePoint". */
  readonly lit: string | undefined;
  /** The colours of the comparison with the other last are laid over this one. */
  readonly mapped: boolean;
}

/** How the maker looks at the last at the first station, shared by the column and the picture. Not part of the work. */
export interface Looking extends Look {
  readonly change: (part: Partial<Look>) => void;
}

export function useLooking(): Looking {
  const [look, set] = useState<Look>({ from: { name: "outer side" }, hand: "feather", lit: undefined, mapped: true });
  return useMemo(() => ({ ...look, change: (part) => set((now) => ({ ...now, ...part })) }), [look]);
}
