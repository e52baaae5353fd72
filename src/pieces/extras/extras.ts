import type { Draft } from "../draft.ts";
import { onPiece } from "../inside-piece.ts";
import type { NetPanel } from "../panel.ts";
import { pricked } from "../pricks.ts";
import type { Parts } from "../parts.ts";
import { backStrip } from "./back-strip.ts";
import { bow } from "./bow.ts";
import type { ExtraInput, PlaceMark } from "./extra.ts";
import { gore } from "./gore.ts";
import { strap } from "./strap.ts";
import { toeCap } from "./toe-cap.ts";

/** What the maker adds to a plain pump; the upper's own drafts come back with the places of it marked, and with their pricks. */
export function extraPieces(input: ExtraInput): Parts & { readonly upper: readonly Draft[] } {
  const { chosen, upper, panels } = input;
  const extras = [
    ...(chosen.toeCap ? [toeCap(input)] : []),
    ...(chosen.backStrip ? [backStrip(input)] : []),
    ...(chosen.strap ? [strap(input)] : []),
    ...(chosen.gore ? [gore(input)] : []),
    ...(chosen.bow ? [bow(input)] : []),
  ];
  const marks = extras.flatMap((e) => e.marks ?? []);
  return {
    drafts: extras.flatMap((e) => e.drafts).map((draft) => pricked(kept(draft))),
    strips: extras.flatMap((e) => e.strips ?? []),
    findings: extras.flatMap((e) => e.findings ?? []),
    upper: upper.map((draft) => pricked(marked(draft, panels, marks))),
  };
}

function marked(draft: Draft, panels: readonly NetPanel[], all: readonly PlaceMark[]): Draft {
  // A net card is held against the last, before there is anything to add.
  const own = draft.net ? [] : all.filter(({ panel }) => panels[panel]!.name === draft.ground).map(({ mark }) => mark);
  return own.length === 0 ? draft : { ...draft, marks: [...draft.marks, ...onPiece(draft.outline, own)] };
}

const kept = (draft: Draft): Draft => ({ ...draft, marks: onPiece(draft.outline, draft.marks) });
