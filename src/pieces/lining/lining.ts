import { finding, type Finding } from "#base/findings.ts";
import type { ShellSettings } from "#shell/settings.ts";
import type { Chosen } from "../choices.ts";
import type { Labels } from "../label-text.ts";
import type { NetUpper } from "../net-upper.ts";
import type { Parts } from "../parts.ts";
import type { PieceSettings } from "../settings.ts";
import { checkPanels, checkPocket, checkSmaller } from "./check.ts";
import type { HeelNet } from "./heel-net.ts";
import { placeJoints, type UpperSeam } from "./joints.ts";
import type { Scales } from "./on-last.ts";
import { refuseImpossibleLining } from "./possible.ts";
import { cutLining } from "./one.ts";
import { lackingOf, type OwnLining } from "./own.ts";
import { liningInThree, liningPanels, type LiningPanels } from "./three.ts";
import { seamTapes } from "./tapes.ts";

export interface LiningInput {
  /** The whole upper's net, open at the back. */
  readonly upper: NetUpper;
  /** The lining's own; none for a taped pattern, whose lining is cut from the upper's net in one piece. */
  readonly own?: OwnLining;
  /** What a lining in pieces needs beside it: lengths on the last along the own net's edges, and the heel's sheet. */
  readonly laid?: { readonly scales: Scales; readonly heel: HeelNet };
  /** Seams of the upper other than at the back. */
  readonly seams: readonly UpperSeam[];
  readonly settings: PieceSettings;
  readonly stiffener: Pick<ShellSettings, "counterMm" | "counterInnerMm" | "counterOuterMm">;
  readonly chosen: Pick<Chosen, "lining" | "edge">;
  readonly labels: Labels;
}

/**
 * The lining in one piece with a back seam, or as vamp lining, two quarter linings and a heel pocket without a seam. Method: docs/method/lining.md.
 * @throws Refusal at a number with which no heel pocket can be cut
 */
export function liningPieces({ upper, own, laid, seams, settings, stiffener, chosen, labels }: LiningInput): Parts & { readonly panels?: LiningPanels } {
  const bagged = chosen.edge === "bagged";
  const inOne = (findings: readonly Finding[]): Parts => ({ drafts: [cutLining(upper, settings, labels, own, bagged)], strips: seamTapes(own?.net ?? upper, settings), findings });
  const smaller = own ? checkSmaller(upper, own.net) : [];
  if (chosen.lining === "one") return inOne(smaller);
  if (!own || !laid) return inOne([finding("lining-in-one", {}), ...smaller]);
  refuseImpossibleLining(settings);
  const { joints, findings } = placeJoints(own.net, laid.scales, seams, settings);
  if (!joints) return inOne([...findings, ...smaller]);
  const input = { net: own.net, heel: laid.heel, joints, settings, lacking: lackingOf(settings, upper, own), bagged, labels };
  const panels = liningPanels(input);
  return { panels, drafts: liningInThree(input, panels), strips: [], findings: [...findings, ...panels.findings, ...smaller, ...checkPanels(upper, own.net, panels), ...checkPocket(laid.heel, settings, stiffener)] };
}
