import type { Job } from "#job/job.ts";
import type { Pair } from "#job/pair.ts";
import { pullWord } from "#lasting/lasted.ts";
import { lastingFrom } from "#lasting/settings.ts";
import { usualLeather } from "#leather/leather-from.ts";
import { upperLayers } from "#leather/leather.ts";
import { knownWords } from "#leather/strip-words.ts";
import { readingsIn } from "./leathers.ts";
import { say } from "./numbers.ts";

/** The state of the station Leather: "upper calf, tested; lining pig". */
export function leatherWords({ leather }: Job): string {
  const [upper, lining] = upperLayers.map((layer) => {
    const said = leather[layer];
    return `${said?.name?.trim() || knownWords[said?.known ?? usualLeather[layer]]}${readingsIn(said) > 0 ? ", tested" : ""}`;
  });
  return `upper ${upper}; lining ${lining}`;
}

/** The state of the station Lasting: "toe pulled firm, 20 N; cut as the card". */
export function lastingWords({ lasting }: Job, from: Pair["from"]): string {
  if (from === "tape") return "needs a last";
  const { pullToeN, correct } = lastingFrom(lasting);
  return `toe pulled ${pullWord(pullToeN)}, ${say(pullToeN)} N; ${correct ? "cut as corrected" : "cut as the card"}`;
}
