/** A machine needle: `nm` is its blade's diameter in hundredths of a millimetre, `us` the American number of the same size. */
export interface NeedleSize {
  readonly nm: number;
  readonly us: number;
}

/** Sizes by both systems (needle tables on the web; they differ on 65 and 120, where the usual pairs are taken). */
export const needleSizes: readonly NeedleSize[] = [
  { nm: 65, us: 9 }, { nm: 70, us: 10 }, { nm: 75, us: 11 }, { nm: 80, us: 12 }, { nm: 90, us: 14 }, { nm: 100, us: 16 }, { nm: 110, us: 18 }, { nm: 120, us: 19 },
];

export const bladeMm = ({ nm }: Pick<NeedleSize, "nm">): number => nm / 100;
export const usOfNm = (nm: number): number | undefined => needleSizes.find((size) => size.nm === nm)?.us;
export const nmOfUs = (us: number): number | undefined => needleSizes.find((size) => size.us === us)?.nm;

/** Finest thread, by metric ticket, that a needle is still taken for in upper leather, thickest needle first (from memory: a habit of the trade, one size either way does as well). */
const needleFrom: readonly (readonly [ticketMost: number, nm: number])[] = [[25, 120], [35, 110], [50, 100], [70, 90], [100, 80]];

/** The needle for a thread in upper leather: 90 for ticket 60, finer ones for finer thread. */
export function needleForTicket(ticket: number): NeedleSize {
  const nm = needleFrom.find(([most]) => ticket <= most)?.[1] ?? 75;
  return needleSizes.find((size) => size.nm === nm)!;
}
