import type { OverUpper } from "#lasting/over-upper.ts";
import type { MakingInput } from "../input.ts";
import { mmRead } from "./words.ts";

/** What the tape reads over the lasted upper, as the sheet of marks and the log ask for it: "throat 76 mm, back 57 mm". */
export function overWords({ throatDepthMm, backHeightMm, innerHeightMm, outerHeightMm }: MakingInput["ends"], { throatMm, backMm, lowestMm }: OverUpper): string {
  const sides = innerHeightMm !== undefined && outerHeightMm !== undefined ? `, lowest places ${mmRead(innerHeightMm + lowestMm.medial)} inside and ${mmRead(outerHeightMm + lowestMm.lateral)} outside` : "";
  return `throat ${mmRead(throatDepthMm + throatMm)}, back ${mmRead(backHeightMm + backMm)}${sides}`;
}
