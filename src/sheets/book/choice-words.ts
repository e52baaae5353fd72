import { listed } from "#base/listed.ts";
import { mmMeasured } from "#making/steps/words.ts";
import type { BackTop, LiningCut, PartChoices, SeamKind, SockKind, UpperCut } from "#pieces/choices.ts";
import type { ToplineEdge } from "#shell/settings.ts";
import type { SheetInput } from "../input.ts";

const cuts: Readonly<Record<UpperCut, string>> = { "back-seam": "in one piece with a back seam", "inner-seam": "in one piece with a seam at the inner waist", quarters: "as vamp and two quarters" };
const seams: Readonly<Record<SeamKind, string>> = { closed: "closed", lapped: "lapped", butted: "butted" };
const tops: Readonly<Record<BackTop, string>> = { mitre: "mitred at the top", notch: "notched at the top", "dog-tail": "with a dog-tail" };
const edges: Readonly<Record<ToplineEdge, string>> = { taped: "folded over a tape", folded: "folded", raw: "cut raw", bound: "bound, the strip turned inside", wrapped: "bound, the strip round the edge", bagged: "bagged with the lining" };
const linings: Readonly<Record<LiningCut, string>> = { three: "in vamp, quarters and a heel pocket", one: "in one piece" };
const socks: Readonly<Record<SockKind, string>> = { full: "a full sock", half: "a half sock", heel: "a heel sock" };
const extras: readonly (readonly [keyof PartChoices, string])[] = [["toeCap", "a toe cap"], ["backStrip", "a back strip"], ["strap", "an instep strap"], ["gore", "an elastic gore"], ["bow", "a bow"], ["sideLining", "side linings"]];

/** What was decided for this pair, in a few plain sentences. */
export function choiceWords({ parts, made, edge }: SheetInput): string {
  const seam = parts.cut === "back-seam" ? "" : `, its ${parts.cut === "quarters" ? "side seams" : "seam"} ${seams[parts.seam]}`;
  const back = parts.cut === "inner-seam" ? "" : `; the back seam is ${seams[parts.backSeam]}${parts.backSeam === "closed" ? `, ${tops[parts.backTop]}` : ""}`;
  const heel = made?.heel ? `; beneath, a leather sole and a heel of ${mmMeasured(made.heel.backMm)} in ${made.heel.layers.length} layers` : "";
  const added = listed(extras.filter(([key]) => parts[key] === true).map(([, words]) => words));
  return [
    `The upper is cut ${cuts[parts.cut]}${seam}${back}.`,
    `The topline is ${edges[edge]}, and the lining is ${linings[parts.lining]}.`,
    `Inside lies ${socks[parts.sock]}${heel}.`,
    ...(added ? [`Added: ${added}.`] : []),
  ].join(" ");
}
