/** A machine needle: `nm` is its blade's diameter in hundredths of a millimetre, `us` the American number of the same size. */
export interface NeedleSize {
  readonly nm: number;
  readonly us: number;
}

export const bladeMm = ({ nm }: Pick<NeedleSize, "nm">): number => nm / 100;

/**
 * Finest thread, by metric ticket, that a needle is still taken for in upper leather, thickest needle first (from memory: a habit of the trade,
 * one size either way does as well). Both numbers of a size stand side by side in needle tables on the web; they differ on 120.
 */
const needleFrom: readonly (readonly [ticketMost: number, size: NeedleSize])[] = [
  [25, { nm: 120, us: 19 }], [35, { nm: 110, us: 18 }], [50, { nm: 100, us: 16 }], [70, { nm: 90, us: 14 }], [100, { nm: 80, us: 12 }], [Infinity, { nm: 75, us: 11 }],
];

/** The needle for a thread in upper leather: 90 for ticket 60, finer ones for finer thread. */
export const needleForTicket = (ticket: number): NeedleSize => needleFrom.find(([most]) => ticket <= most)![1];
