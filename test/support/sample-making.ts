import type { MakingInput } from "#making/input.ts";
import { makingOf } from "#making/making-of.ts";
import type { Making } from "#making/making.ts";
import { usualParts } from "#pieces/choices.ts";
import type { Piece } from "#pieces/piece.ts";
import type { PieceSettings } from "#pieces/settings.ts";

type Asked = { readonly pieces: readonly Piece[]; readonly settings: PieceSettings } & Partial<MakingInput>;

/** What making some pieces takes, where a test has no whole pair. */
export const sampleMaking = (asked: Asked): Making =>
  makingOf({
    from: "last",
    strips: [],
    stitching: [],
    parts: usualParts,
    edge: "taped",
    stiff: { counterMm: 1, counterBelowMm: 9, counterInnerMm: 87, counterOuterMm: 79.5, puffReachMm: 41, skiveMm: 15, skiveFeatherMm: 9 },
    leathers: { upper: { name: "goat", known: "goat" }, lining: { name: "lining goat", known: "lining goat" } },
    corrected: false,
    ends: { throatDepthMm: 70, backHeightMm: 55 },
    said: {},
    ...asked,
  });
