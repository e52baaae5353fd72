import { unwatched, type Watch } from "#base/watch.ts";
import { mirrorLast } from "#last/mirror.ts";
import { Ground } from "#wrap/ground.ts";
import { featherRing } from "./feather-ring.ts";
import { EndsGauge } from "./ends.ts";
import { groundOf, type LastGround } from "./ground-of.ts";
import { Hands } from "./hands.ts";
import type { Lasted } from "./lasted.ts";
import { lastedFrom } from "./lasted-from.ts";
import { mirroredLasted, mirroredLines, mirroredUpper } from "./mirrored.ts";
import type { PullInput } from "./pull-input.ts";
import { pullsAlong } from "./pulls.ts";
import { betweenStage, draftStages, lightPulls } from "./sequence.ts";

export interface PullOptions {
  readonly watch?: Watch;
  /** Whether pictures of it are kept on the way. */
  readonly frames?: boolean;
  /** One of many trials, of which only the differences count. */
  readonly rough?: boolean;
  /** What was made ready before for the same shell, last and lines; the upper may be cut otherwise. */
  readonly board?: LastingBoard;
}

/** What a right upper is pulled over and measured with, whatever it is cut from and like. */
export interface LastingBoard {
  readonly ground: LastGround;
  readonly gauge: EndsGauge;
}

/** @throws Refusal `lasting-hole` where the last has a hole beneath the upper */
export function lastingBoard({ cut, last, lines }: Pick<PullInput, "cut" | "last" | "lines">): LastingBoard {
  const ground = groundOf(cut, last);
  return { ground, gauge: new EndsGauge(last, lines, cut, ground) };
}

/**
 * Pulls an upper over its last as a maker does: laid on with light hands, drafts in their order with friction, tack after tack, then the
 * feather line between them. Method, limits and the error to expect: docs/method/lasting.md. A left upper is reckoned as the right one it
 * mirrors. Where it tears or does not come to rest the result is what was reached, with a finding.
 * @throws Refusal `lasting-hole` where the last has a hole beneath the upper
 */
export function pullOver(input: PullInput, options: PullOptions = {}): Lasted {
  if (input.last.side === "right") return pullRight(input, options);
  const { cut, last, lines } = input;
  return mirroredLasted(pullRight({ ...input, cut: mirroredUpper(cut), last: mirrorLast(last), lines: mirroredLines(lines) }, { ...options, board: undefined }));
}

function pullRight(input: PullInput, { watch = unwatched, frames: keep = false, rough = false, board = lastingBoard(input) }: Omit<PullOptions, "board"> & { readonly board?: LastingBoard | undefined }): Lasted {
  const { cut, last, fabric, settings } = input;
  const { ground, gauge } = board, ring = featherRing(cut.over), pulls = pullsAlong(cut.onLast, last, settings);
  const hands = new Hands({ cut, fabric, ring, ground: new Ground(ground.over), friction: settings.friction, gauge, light: lightPulls(pulls, ring), watch, keep, rough });
  hands.layOn();
  const stages = draftStages(pulls, ring, cut.onLast), taken = stages.flatMap((stage) => hands.draft(stage));
  const drafts = pulls.drafts.map((draft) => ({ ...draft, ...taken.find(({ number }) => number === draft.number) }));
  hands.draft(betweenStage(cut.onLast, drafts, ring, stages));
  hands.rest();
  return lastedFrom(input, { gauge, drafts, hands });
}
