import { capital } from "#base/listed.ts";
import type { Lasted } from "#lasting/lasted.ts";
import type { Point3 } from "#last/last.ts";
import { say } from "./numbers.ts";

/** One step of the pull-over as the maker goes through it. */
export interface PullStep {
  /** Which of the pictures that were kept. */
  readonly frame: number;
  /** What is done, in small letters: "draft 1, toe centre". */
  readonly what: string;
  /** It goes on in the next step. */
  readonly goesOn: boolean;
  /** Numbers of the drafts that are drawn now, and of those that hold already. */
  readonly drawn: readonly number[];
  readonly holding: readonly number[];
  /** What moves most since the step before: how far, mm, and where it then is. */
  readonly moved: { readonly mm: number; readonly at: Point3 } | undefined;
}

/** Below this nobody sees anything move, mm. */
const seenMm = 0.15;
const part = /, part of it$/;

/**
 * The pictures that show something: of what is laid on only the end, of a draft no two that look alike. In the order of the work, the
 * last one at rest.
 */
export function pullSteps({ frames, drafts }: Pick<Lasted, "frames" | "drafts">): readonly PullStep[] {
  const kept: { frame: number; what: string; goesOn: boolean }[] = [];
  frames.forEach((frame, i) => {
    const what = frame.what.replace(part, ""), before = kept.at(-1);
    const same = before?.what === what && (what === "laid on" || movedMost(frames[before.frame]!.positions, frame.positions).mm < seenMm);
    if (same) kept.pop();
    kept.push({ frame: i, what, goesOn: frame.what !== what });
  });
  return kept.map((step, i): PullStep => {
    const drawn = draftsOf(step.what), before = kept.slice(0, i).flatMap(({ what }) => draftsOf(what)).filter((n) => !drawn.includes(n));
    const all = drafts.map(({ number }) => number);
    const held = kept.slice(0, i).some(({ what }) => isBetween(what)) || isBetween(step.what) ? all : [...new Set(before)];
    return { ...step, drawn, holding: held, moved: i === 0 ? undefined : movedMost(frames[kept[i - 1]!.frame]!.positions, frames[step.frame]!.positions) };
  });
}

const isBetween = (what: string): boolean => what === "between the drafts";

/** Numbers of the drafts that a step is about: "drafts 2 and 3, toe corners". */
function draftsOf(what: string): readonly number[] {
  const [, first, second] = /^drafts? (\d+)(?: and (\d+))?/.exec(what) ?? [];
  return [first, second].filter((n) => n !== undefined).map(Number);
}

function movedMost(from: Float32Array, to: Float32Array): { readonly mm: number; readonly at: Point3 } {
  let most = 0, at = 0;
  for (let k = 0; k < to.length; k += 3) {
    const far = (to[k]! - from[k]!) ** 2 + (to[k + 1]! - from[k + 1]!) ** 2 + (to[k + 2]! - from[k + 2]!) ** 2;
    if (far > most) [most, at] = [far, k];
  }
  return { mm: Math.sqrt(most), at: [to[at]!, to[at + 1]!, to[at + 2]!] };
}

/** What is done in a step, for the maker: "Draft 1, toe centre, drawn with 100 N (strong)". */
export function stepWords(step: PullStep, drafts: Lasted["drafts"]): string {
  if (step.what === "laid on") return "Laid on with light hands";
  if (step.what === "at rest") return "At rest";
  if (step.drawn.length === 0) return `${capital(step.what)} the edge is ${step.goesOn ? "being drawn" : "drawn"} all round`;
  const pulls = drafts.filter(({ number }) => step.drawn.includes(number));
  const alike = pulls.every(({ pullN }) => Math.abs(pullN - pulls[0]!.pullN) < 0.5);
  const pull = (alike ? pulls.slice(0, 1) : pulls).map(({ pullN, word }) => `${say(pullN, 0)} N (${word})`).join(" and ");
  const short = step.goesOn ? 0 : Math.max(0, ...pulls.map(({ shortMm = 0 }) => shortMm));
  const keeps = short > 0 ? `; the topline keeps ${say(short)}\u00a0mm above its mark` : "";
  return `${capital(step.what)}, ${step.goesOn ? "being drawn" : "drawn"} with ${pull}${alike && pulls.length > 1 ? " each" : ""}${keeps}`;
}
