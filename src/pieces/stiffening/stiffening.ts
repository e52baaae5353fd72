import type { ShellSettings } from "#shell/settings.ts";
import type { Chosen } from "../choices.ts";
import type { Labels } from "../label-text.ts";
import type { HeelNet } from "../lining/heel-net.ts";
import type { Scales } from "../lining/on-last.ts";
import type { NetUpper } from "../net-upper.ts";
import type { Parts } from "../parts.ts";
import type { GroundName } from "../piece.ts";
import type { PieceSettings } from "../settings.ts";
import { cutPuff } from "./puff.ts";
import { cutSideLinings } from "./side-lining.ts";
import { cutStiffener, type CounterSizes } from "./stiffener.ts";
import { flankTapes } from "./strips.ts";

export interface StiffeningInput {
  /** The sheet that puff and side lining are drawn on, open at the back: the upper's or the lining's. */
  readonly net: NetUpper;
  readonly ground: GroundName;
  /** Lengths on the last along its edges, and the heel's own sheet; none for a taped pattern, which then has neither stiffener nor side lining. */
  readonly laid?: { readonly scales: Scales; readonly heel: HeelNet; readonly lastLengthMm: number };
  readonly sizes: CounterSizes & Pick<ShellSettings, "puffReachMm">;
  readonly settings: PieceSettings;
  readonly chosen: Pick<Chosen, "edge" | "sideLining" | "gore">;
  readonly labels: Labels;
}

/** Stiffener, toe puff, side linings and flank tapes. Method: docs/method/lining.md. */
export function stiffeningPieces({ net, ground, laid, sizes, settings, chosen, labels }: StiffeningInput): Parts {
  const puff = cutPuff({ net, ground, sizes, settings, labels });
  const stiffener = laid ? cutStiffener({ heel: laid.heel, sizes, settings, lastLengthMm: laid.lastLengthMm, labels }) : { findings: [] };
  const sides = laid && chosen.sideLining ? cutSideLinings({ net, ground, scales: laid.scales, sizes, settings, labels }) : { drafts: [], findings: [] };
  return {
    drafts: [...(stiffener.draft ? [stiffener.draft] : []), ...(puff.draft ? [puff.draft] : []), ...sides.drafts],
    strips: flankTapes(chosen, settings),
    findings: [...stiffener.findings, ...puff.findings, ...sides.findings],
  };
}
