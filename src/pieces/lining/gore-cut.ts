import type { Draft } from "../draft.ts";
import { goreMarks } from "../extras/gore.ts";
import { onPiece } from "../inside-piece.ts";
import { wholePanel } from "../net-panels.ts";
import type { NetUpper } from "../net-upper.ts";
import type { PieceSettings } from "../settings.ts";

/** The lining's pieces with the gore drawn on those that lie behind it: a lining that is not cut out alike holds it shut. */
export function withGore(drafts: readonly Draft[], net: NetUpper, own: boolean, settings: PieceSettings): readonly Draft[] {
  const marks = goreMarks([wholePanel(net, own ? "lining" : "upper")], settings, 0).map(({ mark }) => mark);
  // The heel pocket is drawn on a sheet of its own, and lies behind the gore.
  return drafts.map((draft) => (draft.ground === (own ? "lining" : undefined) ? { ...draft, marks: [...draft.marks, ...onPiece(draft.outline, marks)] } : draft));
}
