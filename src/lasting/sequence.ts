import type { Shell } from "#shell/shell.ts";
import type { Mark } from "./ends.ts";
import { jawShares, placeOnRing, pullOnVertices, roundRing, type FeatherRing } from "./feather-ring.ts";
import { draftMark, perMmOf, type DraftPlace, type Pulls } from "./pulls.ts";

/** One draft of a stage. */
export interface StagePull {
  readonly number: number;
  /** How hard it is pulled at most, N. */
  readonly mostN: number;
  /** The mark at which it stops; left out where it is pulled by feel. */
  readonly mark?: Mark;
  /** Share of its pull that each of the stage's places bears. */
  readonly shares: Float64Array;
}

/** One thing that the maker does, on vertices of the feather ring by their place in it. */
export interface Stage {
  /** "draft 1, toe centre", "drafts 2 and 3, toe corners", …, "between the drafts". */
  readonly what: string;
  /** Where the edge is pulled. What was tacked stays. */
  readonly places: Uint32Array;
  /** One draft, both of a pair, or none between the drafts. */
  readonly pulls: readonly StagePull[];
  /** What each place is pulled with at least, N. */
  readonly leastN: Float64Array;
}

/** Share of the pull along the feather line with which light hands hold the edge down until it is pulled (our own choice: just so that nothing springs up). */
export const lightShare = 0.1;
/** What each place of a stage is pulled with, N, its drafts pulled with `pullsN`. */
export function loadOf({ pulls, leastN }: Stage, pullsN: readonly number[]): Float64Array {
  return leastN.map((least, i) => Math.max(least, pulls.reduce((sum, { shares }, k) => sum + pullsN[k]! * shares[i]!, 0)));
}

/** The drafts in their order, both of a pair at the same time. Each tacks what it has pulled. */
export function draftStages(pulls: Pulls, ring: FeatherRing, onLast: Shell): readonly Stage[] {
  const light = lightPulls(pulls, ring), taken = new Uint8Array(ring.ids.length);
  return pairsOf(pulls.drafts).map((pair): Stage => {
    const shares = pair.map((draft) => jawShares(ring, placeOnRing(ring, onLast, draft)));
    // Jaws that reach where one has pulled before find it tacked; an edge that they hardly touch hangs on by the light hands.
    const places = Uint32Array.from(Array.from(taken, (_, k) => k).filter((k) => !taken[k] && shares.some((share) => share[k]! > 0)));
    for (const k of places) taken[k] = 1;
    const stagePulls = pair.map((draft, d): StagePull => {
      const mark = pulls.stopAtMarks ? draftMark(draft) : undefined;
      return { number: draft.number, mostN: draft.pullN, ...(mark && { mark }), shares: Float64Array.from(places, (k) => shares[d]![k]!) };
    });
    return { what: nameOf(pair), places, pulls: stagePulls, leastN: Float64Array.from(places, (k) => light[k]!) };
  });
}

/** At last the feather line between the drafts, with pulls that pass smoothly from one draft's to the next's. */
export function betweenStage(onLast: Shell, drafts: readonly DraftPlace[], ring: FeatherRing, stages: readonly Stage[]): Stage {
  const taken = new Set(stages.flatMap(({ places }) => Array.from(places)));
  const places = Uint32Array.from(Array.from(ring.ids, (_, k) => k).filter((k) => !taken.has(k)));
  const all = pullOnVertices(ring, roundRing(perMmOf(onLast, drafts)));
  return { what: "between the drafts", places, pulls: [], leastN: Float64Array.from(places, (k) => all[k]!) };
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
