import type { Placement, Point3 } from "#last/last.ts";
import type { LastCheck } from "#shell/check.ts";
import type { Halves } from "#shell/halves.ts";
import type { Relief } from "#shell/relief.ts";
import { inFile } from "./measure-report.ts";
import { round, rounded } from "./report-number.ts";

/** How a pattern did when it was tried out. */
export interface Tried {
  readonly check: LastCheck;
  readonly relief: Relief;
  readonly halves: Halves;
}

/** The same as plain data: lengths in mm, points in the file's own coordinates. Field by field: docs/report.md. */
export function triedReport({ check, relief, halves }: Tried, placement: Placement) {
  const at = (p: Point3): Point3 => inFile(p, placement);
  const { nicks, feather, heelGapMm, gain, strain, strainWithNicks, seams } = relief;
  return {
    check: {
      rows: check.rows.map(({ key, half, onLastMm, onCardMm, leastMm, mostMm, holds, at: place }) => ({
        ...rounded({ name: key, ...(half && { half }), onLast: onLastMm, onCard: onCardMm, least: leastMm, most: mostMm, holds }),
        ...(place && { at: at(place) }),
      })),
      gapes: check.gapes.map((gape) => ({ ...rounded(gape), at: at(gape.at) })),
      nickedMm: rounded(check.nicked),
    },
    // Where a nick lies on the flat stays out: the net pattern's frame is told nowhere else.
    nicks: nicks.map(({ onFlat: _, at: mouth, ...nick }) => ({ ...rounded(nick), at: at(mouth) })),
    nicked: { ...rounded({ takesAway: gain, feather, heelGapMm }), strainWithout: strain, strainWith: strainWithNicks },
    seams: seams.map((worth) => ({ ...worth, seamMm: round(worth.seamMm), gain: round(worth.gain) })),
    halves: rounded({ keepSeparate: halves.keepSeparate, mostDifferent: halves.mostDifferent, topline: halves.topline, back: halves.back, feather: halves.feather }),
  };
}
