import { unwatched } from "#base/watch.ts";
import { coarseTrial, type BandOptions, type Pattern } from "./band.ts";
import type { Lasted } from "./lasted.ts";
import type { LastingCase } from "./lasting-case.ts";
import type { DraftEffect, DraftEffects } from "./log-effects.ts";
import { grouped } from "./log-groups.ts";
import { byName, endNames, type EndName } from "./log.ts";
import { trueMechanics } from "./mechanics.ts";
import { pullKeys } from "./pull-keys.ts";
import { hasMark } from "./pulls.ts";
import type { PullSettings } from "./settings.ts";

/** Drafts that share a pull. Toe corners are left as they are: both sides alike, they only follow the toe. */
const kinds = [...grouped(Object.keys(pullKeys).map(Number), (draft) => pullKeys[draft]!)].map(([key, drafts]) => ({ key, drafts })).filter(({ key }) => key !== "pullToeCornerN");
/** A pattern of which is known how its drafts were pulled. */
export interface PulledPattern extends Pattern {
  readonly lasted: Pick<Lasted, "ends" | "asked" | "drafts">;
}

/** Enough to stand out from what the coarse sheet leaves open: this share of the pull either way, N at the least. */
const moreShare = 0.25;
const moreN = 1;

/**
 * What one more newton at each draft does, tried on the coarse sheet by pulling it a quarter more and a quarter less than it was pulled when the
 * pattern was pulled over, whether it stopped at a mark there or not. Drafts of one kind are pulled alike on both sides: each answers for its
 * own side's height, and for half of what throat and back do.
 */
export function draftEffects(of: LastingCase, pattern: PulledPattern, { watch = unwatched, mechanics = trueMechanics }: Pick<BandOptions, "watch" | "mechanics"> = {}): DraftEffects {
  const trial = coarseTrial(of, pattern, mechanics), settings = { ...of.settings, ...pulledWith(pattern.lasted), stopAtMarks: false };
  let done = 0;
  const pulledAt = (key: keyof PullSettings, pullN: number): Lasted => {
    const lasted = trial({ ...of, settings: { ...settings, [key]: pullN } }, (stage, fraction) => watch(stage, (done + fraction) / (2 * kinds.length)));
    done++;
    return lasted;
  };
  const effects = kinds.flatMap(({ key, drafts }) => {
    const now = settings[key], byN = Math.max(moreN, moreShare * now);
    const more = pulledAt(key, now + byN), less = pulledAt(key, now - byN), [a, b] = [byName(more.ends), byName(less.ends)];
    return drafts.map((draft): DraftEffect => {
      const perN = (name: EndName): number => (shareOf(name, draft, drafts.length) * (a[name] - b[name])) / (2 * byN);
      const over = (lasted: Lasted): number => lasted.drafts.find(({ number }) => number === draft)?.overMm ?? 0;
      return { draft, perN: Object.fromEntries(endNames.map((name) => [name, perN(name)])) as DraftEffect["perN"], edgePerN: (over(more) - over(less)) / (2 * byN), ...(of.settings.stopAtMarks && hasMark(draft) && { tookN: now }) };
    });
  });
  watch("drafts", 1);
  return { from: "reckoned", effects };
}

/** What the drafts of each kind were pulled with, their mean, N. */
function pulledWith({ drafts }: PulledPattern["lasted"]): Partial<PullSettings> {
  const byKey = grouped(drafts, ({ number }) => pullKeys[number]!);
  return Object.fromEntries([...byKey].map(([key, own]) => [key, own.reduce((sum, { pullN }) => sum + pullN, 0) / own.length]));
}

function shareOf(name: EndName, draft: number, many: number): number {
  if (many === 1) return 1;
  const inner = draft % 2 === 1;
  return name === "innerHeightMm" ? Number(inner) : name === "outerHeightMm" ? Number(!inner) : 0.5;
}
