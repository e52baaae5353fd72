import { createContext, useContext, type ReactElement } from "react";
import { followedWords, type Followed } from "../state/follow.ts";

/** What the last edit brought about, for the sentence in which it was made. */
export const FollowedHere = createContext<Followed | undefined>(undefined);

/** Which pieces have become others with the number or the word just changed, under its sentence. */
export function WhatFollows({ keys }: { readonly keys: readonly string[] }): ReactElement | null {
  const followed = useContext(FollowedHere);
  if (!followed || !keys.some((key) => followed.keys.includes(key))) return null;
  return <p className="follows" role="status">{followedWords(followed) ?? "No outline changed with it."}</p>;
}
