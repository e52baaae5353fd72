import type { PieceSettings } from "../settings.ts";
import type { Ply, Stitched } from "../stitching.ts";

/**
 * What skiving leaves where stitches run, mm: the middle of what the rules of skiving name (a fold 0.4 to 0.6, an under-lap 0.6 to 0.7, a closed
 * seam 0.7 to 0.8, a raw edge that lies over 0.8; common practice, no source). A leather that is thinner stays as it is. A feathered skive is
 * counted as if it were as thin all over: what the needle goes through is at most some tenths of a millimetre more.
 */
const leftMm = { fold: 0.5, lap: 0.65, seam: 0.75, raw: 0.8 } as const;

/** A leather's thickness under stitches that run `inMm` from its cutting edge, skived from there over `skiveMm`. */
export const skived = (mm: number, as: keyof typeof leftMm, skiveMm: number, inMm: number): number => (skiveMm > inMm ? Math.min(mm, leftMm[as]) : mm);

/** A fold is never turned over without skiving, which reaches past its own stitches: both its sides are as thin. */
export const foldedPly = (of: string, mm: number): Ply => ({ of: `${of}, folded`, mm: Math.min(mm, leftMm.fold), count: 2 });

/** One thickness of tape in the fold, and of the elastic of a gore, mm; from memory. */
export const foldTapeThickMm = 0.2;
export const elasticThickMm = 1;

export const ply = (of: string, mm: number, count = 1): Ply => ({ of, mm, count });
export const upperPly = ({ upperThicknessMm }: Pick<PieceSettings, "upperThicknessMm">, count = 1): Ply => ply("upper", upperThicknessMm, count);
export const liningPly = ({ liningThicknessMm }: Pick<PieceSettings, "liningThicknessMm">, count = 1): Ply => ply("lining", liningThicknessMm, count);

/** A line of stitches; one row of lockstitch where nothing is said. */
export function stitched(line: Pick<Stitched, "name" | "joins" | "plies" | "lengthMm" | "use"> & Partial<Pick<Stitched, "rows" | "stitch">>): Stitched {
  const { name, joins, plies, lengthMm, rows = 1, stitch = "lockstitch", use } = line;
  return { name, joins, plies, stackMm: plies.reduce((sum, { mm, count }) => sum + mm * count, 0), lengthMm, rows, stitch, use };
}
