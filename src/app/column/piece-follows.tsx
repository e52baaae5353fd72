import { createContext, useContext, type ReactElement } from "react";
import { severityOf } from "#base/findings.ts";
import { spotsOf } from "../state/spots.ts";
import { FoundHere } from "./notes.tsx";
import { followedWords, type Followed } from "../state/follow.ts";

/** What the last edit brought about, for the sentence in which it was made. */
export const FollowedHere = createContext<Followed | undefined>(undefined);

/** Which pieces have become others with the number or the word just changed, under its sentence. */
export function WhatFollows({ keys }: { readonly keys: readonly string[] }): ReactElement | null {
  const followed = useContext(FollowedHere);
  const { here, rules } = useContext(FoundHere);
  if (!followed || !keys.some((key) => followed.keys.includes(key))) return null;
  const words = followedWords(followed);
  // Where something was left out the reason stands above, and says more than that nothing came of it.
  if (!words && here.some((f) => severityOf(f) === "look" && spotsOf(f, rules).some((spot) => keys.includes(spot)))) return null;
  return <p className="follows" role="status">{words ?? "No outline changed with it."}</p>;
}
