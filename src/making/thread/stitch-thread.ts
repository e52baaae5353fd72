const mmPerInch = 25.4, mmPerCm = 10;

/** Length of one stitch, mm, and its numbers to a length. */
export const stitchMm = (perCm: number): number => mmPerCm / perCm;
export const perInch = (stitchMm: number): number => mmPerInch / stitchMm;

/**
 * Thread per length of a lockstitch seam (type 301), needle and bobbin thread together, for stitches `stitchMm` long through `stackMm`. Each
 * stitch shows its length on either face and takes the way through the stack and back once, shared by both threads: 2 (L + t) over L. The same
 * as C = 2 + 2TS of the textile handbooks. An upper bound: real thread cuts corners and sinks in.
 */
export const lockstitchRatio = (stitchMm: number, stackMm: number): number => 2 * (1 + stackMm / stitchMm);

/**
 * The same of a zigzag (type 304), whose needle goes `throwMm` across at every stitch while the seam goes on by `stitchMm`: what lies on either
 * face is the slanting way √(L² + w²) in place of L, and the way through the stack stays: 2 (√(L² + w²) + t) over L.
 */
export const zigzagRatio = (stitchMm: number, throwMm: number, stackMm: number): number => (2 * (Math.sqrt(stitchMm * stitchMm + throwMm * throwMm) + stackMm)) / stitchMm;

/** Thread of a seam sewn by hand per its length: a rule of thumb of sewers. */
export const handRatio = 4;
