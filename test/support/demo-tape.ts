import { defaultJob } from "#job/default-job.ts";
import type { Job } from "#job/job.ts";
import { Pipeline } from "#job/pipeline.ts";
import { netBottom, type NetBottom } from "#pieces/bottom/net-bottom.ts";
import { netUpper, type NetUpper } from "#pieces/net-upper.ts";
import type { Outline } from "#plane/outline.ts";
import { onLast } from "./on-last.ts";
import { splitAtCentre } from "./taped-outlines.ts";

/** The example pair's flat pattern, invented, as a maker's tape: two halves and the bottom, and what they were cut from. */
export interface DemoTape {
  readonly net: NetUpper;
  readonly bottom: NetBottom;
  readonly medial: Outline;
  readonly lateral: Outline;
  readonly lastLength: number;
  readonly ballWidth: number;
  readonly seatWidth: number;
}

/** The example pair with nothing beneath its upper and its topline as long as on the last: so a tape lies. */
export const bareJob = (): Job => ({ ...defaultJob(), shell: { toplineShorter: 0, counterMm: 0 }, pieces: { liningThicknessMm: 0, upperThicknessMm: 0, toePuffMm: 0 } });

let made: DemoTape | undefined;

/** As a right one lies, seen from outside: toe at the origin, inner half on +y. */
export function demoTape(): DemoTape {
  if (made) return made;
  const pair = onLast(new Pipeline().run(bareJob(), new Map(), { triangles: 4000, withoutPieces: true }));
  const net = netUpper(pair.last, pair.lines, pair.flat);
  const { lastLength, ballWidth, seatWidth } = pair.last.measures;
  made = { net, bottom: netBottom(pair.last, pair.bottom), ...splitAtCentre({ feather: net.feather.line, backMedial: net.backMedial.line, topline: net.topline.line, backLateral: net.backLateral.line }), lastLength, ballWidth, seatWidth };
  return made;
}
