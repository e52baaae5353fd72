import type { Shell } from "#shell/shell.ts";
import { jawShares, placeOnRing, pullOnVertices, roundRing, type FeatherRing } from "./feather-ring.ts";
import type { DraftPlace, Pulls } from "./pulls.ts";

/** One thing that the maker does, on vertices of the feather ring by their place in it. */
export interface Stage {
  /** "draft 1, toe centre", "drafts 2 and 3, toe corners", …, "between the drafts". */
  readonly what: string;
  /** Where the edge is pulled, and how hard each vertex when the pull is full, N. What was tacked stays. */
  readonly places: Uint32Array;
  readonly pullN: Float64Array;
}

/** Share of the pull along the feather line with which light hands hold the edge down until it is pulled (our own choice: just so that nothing springs up). */
export const lightShare = 0.1;

/**
 * The sequence: each draft in its order, both of a pair at the same time and alike; at last the feather line between the drafts. Each tacks
 * what it has pulled.
 */
export function sequenceOf({ drafts, perMm }: Pulls, ring: FeatherRing, onLast: Shell): readonly Stage[] {
  const all = pullOnVertices(ring, roundRing(perMm));
  const taken = new Uint8Array(ring.ids.length);
  const stages = pairsOf(drafts).map((pair): Stage => {
    const pullN = new Float64Array(ring.ids.length);
    for (const draft of pair) jawShares(ring, placeOnRing(ring, onLast, draft)).forEach((share, k) => (pullN[k]! += share * draft.pullN));
    // Jaws that reach where one has pulled before find it tacked; an edge that they hardly touch hangs on by the light hands.
    const places = Uint32Array.from(Array.from(pullN, (_, k) => k).filter((k) => pullN[k]! > 0 && !taken[k]));
    for (const k of places) taken[k] = 1;
    return { what: nameOf(pair), places, pullN: Float64Array.from(places, (k) => Math.max(pullN[k]!, lightShare * all[k]!)) };
  });
  const left = Uint32Array.from(Array.from(taken, (_, k) => k).filter((k) => !taken[k]));
  return [...stages, { what: "between the drafts", places: left, pullN: Float64Array.from(left, (k) => all[k]!) }];
}

/** Drafts that are taken together: those that follow each other on the two halves at one place. */
function pairsOf(drafts: readonly DraftPlace[]): readonly (readonly DraftPlace[])[] {
  const pairs: DraftPlace[][] = [];
  for (const draft of drafts) {
    const before = pairs.at(-1);
    if (draft.half === "lateral" && before?.length === 1 && before[0]!.half === "medial") before.push(draft);
    else pairs.push([draft]);
  }
  return pairs;
}

const nameOf = ([one, other]: readonly DraftPlace[]): string => (other ? `drafts ${one!.number} and ${other.number}, ${one!.name.split(",")[0]!}s` : `draft ${one!.number}, ${one!.name}`);

/** What light hands pull at each vertex of the ring, N. */
export const lightPulls = ({ perMm }: Pulls, ring: FeatherRing): Float64Array => pullOnVertices(ring, roundRing(perMm)).map((pull) => lightShare * pull);
