import { finding, type Finding } from "#base/findings.ts";
import { unwatched, type Watch } from "#base/watch.ts";
import { upperLayers, type UpperLayer } from "#leather/leather.ts";
import { coarseTrial, type Pattern } from "./band.ts";
import type { LastingCase, Mechanics } from "./lasting-case.ts";
import { byName, endNames, type EndsByName } from "./log.ts";
import { trueMechanics } from "./mechanics.ts";

/** What turning one layer does to the ends, mm. */
export interface TurnEffect {
  readonly layer: UpperLayer;
  /** Counter-clockwise from where it lies now, as seen on the piece of a right shoe. */
  readonly byDeg: number;
  readonly ends: EndsByName;
}

export interface Turned {
  readonly effects: readonly TurnEffect[];
  readonly findings: readonly Finding[];
}

export interface TurnOptions {
  readonly byDeg?: number;
  readonly watch?: Watch;
  readonly mechanics?: Mechanics;
}

const turnKeys = { upper: "upperTurnDeg", lining: "liningTurnDeg" } as const;

/** Each layer laid turned both ways on the skin, the pattern as it is: how throat, back and sides then end, against where they end now. */
export function turned(of: LastingCase, pattern: Pattern, { byDeg = 15, watch = unwatched, mechanics = trueMechanics }: TurnOptions = {}): Turned {
  const trial = coarseTrial(of, pattern, mechanics), layers = upperLayers.filter((layer) => layer === "upper" || of.lining);
  const turns = layers.flatMap((layer) => [byDeg, -byDeg].map((deg) => ({ layer, deg })));
  const now = byName(trial(of, (stage, fraction) => watch(stage, fraction / (turns.length + 1))).ends);
  const effects = turns.map(({ layer, deg }, k): TurnEffect => {
    const key = turnKeys[layer], settings = { ...of.settings, [key]: of.settings[key] + deg };
    const { ends } = trial({ ...of, settings }, (stage, fraction) => watch(stage, (k + 1 + fraction) / (turns.length + 1)));
    const then = byName(ends);
    return { layer, byDeg: deg, ends: Object.fromEntries(endNames.map((name) => [name, then[name] - now[name]])) as EndsByName };
  });
  watch("turn", 1);
  return { effects, findings: effects.map(({ layer, byDeg: deg, ends }) => finding("turned", { layer, byDeg: deg, ...ends })) };
}

/** How each kind of piece is laid on its skin, and why. */
export const layingOf = (withLining: boolean): readonly Finding[] => [
  finding("lay-upper", {}),
  ...(withLining ? [finding("lay-vamp-lining", {}), finding("lay-quarter-lining", {}), finding("lay-heel-pocket", {})] : []),
  finding("lay-mated", {}),
];
