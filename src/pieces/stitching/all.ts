import type { Stitched } from "../stitching.ts";
import { extraRows } from "./extras.ts";
import { liningSeams } from "./lining.ts";
import { upperSeams } from "./seams.ts";
import type { ToStitch } from "./to-stitch.ts";
import { toplineRows } from "./topline.ts";

/**
 * Every line of stitches of one shoe, in about the order in which it is sewn: what is laid on the open upper, its seams, the lining's, and
 * what goes through both. Lengths lie where the needle runs on the flat pieces. Not sewn: tapes over seams and flanks, stiffener, toe puff, side
 * linings, sock and all of the bottom, which are stuck or nailed; the cover of a heel; the bow's tacking by hand. Where a number leaves a line no length there
 * is none. Method: docs/method/thread.md.
 */
export const allStitching = (input: ToStitch): readonly Stitched[] => [...upperSeams(input), ...liningSeams(input), ...extraRows(input), ...toplineRows(input)].filter(({ lengthMm }) => lengthMm > 0);
