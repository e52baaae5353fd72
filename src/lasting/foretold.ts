import type { Banded, BandedEnds, Ends, Lasted } from "./lasted.ts";

/** What was foretold of lasting, as far as it was worked out. */
export interface Foretold {
  readonly lasted?: Lasted;
  readonly banded?: BandedEnds;
}

/** A foretold length, mm; with the band where one was drawn. */
export interface Band {
  readonly predicted: number;
  readonly low?: number;
  readonly high?: number;
}

/** What is not in a band drawn over leathers: the net of triangles and the reading of a tape, mm (ours). */
export const readMm = 0.5;

/** A band as it is shown, at least as wide as a length can be read; nothing is made of one that was not drawn. */
export function shownBand<B extends Band>(band: B): B {
  const { predicted, low, high } = band;
  return low === undefined || high === undefined ? band : { ...band, low: Math.min(low, predicted - readMm), high: Math.max(high, predicted + readMm) };
}

/** The foretold value of one length: with its band, or as the one leather that was pulled over gave it; nothing where none was foretold. */
export function foretoldOf(foretold: Foretold | undefined, ofEnds: (ends: Ends) => number, ofBands?: (bands: BandedEnds) => Banded): { readonly foretold?: Band } {
  if (foretold?.banded && ofBands) {
    const { predicted, low, high } = ofBands(foretold.banded);
    return { foretold: { predicted, low, high } };
  }
  return foretold?.lasted ? { foretold: { predicted: ofEnds(foretold.lasted.ends) } } : {};
}
