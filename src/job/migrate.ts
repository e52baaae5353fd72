import { finding, type Finding } from "#base/findings.ts";
import { shellChoices, toplineRule } from "#shell/rules.ts";

/** A saved job as it was read, before it is known to be one. */
export type Saved = { readonly [field: string]: unknown };

/** The version this program writes. */
export const newest = 6;

/** Each step takes a job of the version it is named after to the next one. */
const steps: Readonly<Record<number, (job: Saved) => Saved>> = {
  // What the maker says about a scan came to lie together.
  1: (job) => {
    const last = job["last"] as Saved | undefined;
    if (last?.["from"] !== "scan" || last["side"] === undefined) return job;
    const { side, ...rest } = last;
    return { ...job, last: { ...rest, said: { side } } };
  },
  // The spring came to stand beside what else is decided about the shell. 0 was only what nobody had said.
  2: ({ springMm, ...job }) => {
    const { raw, pieces } = withoutFold(job["pieces"]);
    return { ...job, pieces, shell: { ...(springMm === undefined || springMm === 0 ? {} : { springMm }), ...(raw ? { edge: "raw" } : {}) } };
  },
  // The paper came to stand beside what else is decided about the sheets. A lining was one piece.
  3: ({ paper, ...job }) => ({ ...job, parts: { lining: "one" }, sheets: paper === undefined || paper === "A4" ? {} : { paper } }),
  // Leather, lasting and the log of the shoes came to be said.
  4: (job) => ({ ...job, leather: {}, lasting: {}, log: [] }),
  // Prices, shelf, hours and sessions came to be said.
  5: (job) => ({ ...job, making: {} }),
};

/** A topline without a fold was how a raw edge was said before there was a word for it. */
function withoutFold(pieces: unknown): { readonly raw: boolean; readonly pieces: unknown } {
  if (typeof pieces !== "object" || pieces === null || (pieces as Saved)["toplineFoldMm"] !== 0) return { raw: false, pieces };
  const { toplineFoldMm: _, ...others } = pieces as Saved;
  return { raw: true, pieces: others };
}

/** What comes out otherwise than when the job was saved, to be told once when it is opened; nothing for a taped pattern, which has its topline. */
export function changedSince(saved: Saved): readonly Finding[] {
  const { version, last, pieces } = saved;
  if (!(Number(version) < 3) || (last as Saved | undefined)?.["from"] === "tape") return [];
  const { raw } = withoutFold(pieces);
  return [finding("job-older-shell", { percent: 100 * toplineRule(shellChoices.leather, raw ? "raw" : shellChoices.edge).value, raw })];
}

/** A saved job in today's shape, step by step; what is not a job of an older version comes back as it is. */
export function renewed(job: Saved): Saved {
  let now = job;
  for (let version = Number(job["version"]); version < newest && steps[version]; version++) now = { ...steps[version]!(now), version: version + 1 };
  return now;
}
