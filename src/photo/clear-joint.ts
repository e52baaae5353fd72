import { columns, squareMm } from "./card.ts";
import { onPlane, type SheetJoint } from "./fit-placing.ts";
import type { FlatPicture } from "./flatten-picture.ts";
import { groundAt, type Ground } from "./ground.ts";

/** The joint of the two sheets is looked for this far to either side of where it should be; what is wider is no joint, mm. */
const nearMm = 4;
const widestMm = 3;
/** Cleared beyond what is seen, for blur, mm. */
const rimMm = 0.4;

/**
 * Where the window was not cut out, the joint of the two sheets runs through it as a thin line, by its shadow or by a gap. It is
 * painted over with the ground's colour, row by row where it is thin, so that it does not tie a piece to the window's edge.
 */
export function clearJointInto(flat: FlatPicture, far: Float32Array, ground: Ground, joint: SheetJoint, notGround: number): void {
  const { width, height, stepMm } = flat;
  const size = width * height;
  const edge = columns * squareMm;
  const rim = Math.ceil(rimMm / stepMm);
  for (let j = 0; j < height; j++) {
    const y = flat.minY + j * stepMm;
    const there = (edge + onPlane({ half: "right", xMm: edge, yMm: y }, joint)[0]) / 2;
    const from = Math.max(0, Math.round((there - nearMm - flat.minX) / stepMm)), to = Math.min(width - 1, Math.round((there + nearMm - flat.minX) / stepMm));
    for (let i = from; i <= to; i++) {
      if (!(far[j * width + i]! > notGround)) continue;
      let end = i;
      while (end + 1 < width && far[j * width + end + 1]! > notGround) end++;
      let start = i;
      while (start > 0 && far[j * width + start - 1]! > notGround) start--;
      if ((end - start) * stepMm <= widestMm) {
        for (let k = Math.max(0, start - rim); k <= Math.min(width - 1, end + rim); k++) {
          const at = j * width + k;
          far[at] = 0;
          for (let c = 0; c < 3; c++) flat.light[c * size + at] = groundAt(ground, c, k, j);
        }
      }
      i = end;
    }
  }
}
