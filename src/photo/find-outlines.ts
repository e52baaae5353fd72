import { finding, type Finding } from "#base/findings.ts";
import { Refusal } from "#base/refusal.ts";
import type { Outline } from "#plane/outline.ts";
import { clearJointInto } from "./clear-joint.ts";
import { areaOf } from "./contour.ts";
import { edgeOfPiece, type PieceEdge } from "./cut-piece.ts";
import { leastMm2, middleOfLine } from "./drawn-line.ts";
import type { SheetJoint } from "./fit-placing.ts";
import type { FlatPicture } from "./flatten-picture.ts";
import { farFromGround, groundOf } from "./ground.ts";
import { above, cutOut, depthOf, distanceFrom, partsOf, upTo, type Part } from "./masks.ts";
import { smoothLoop } from "./smooth-loop.ts";

/** What an outline is the edge of. */
export type OutlineKind = "cut piece" | "drawn line";

export interface FoundOutlines {
  readonly outlines: readonly { readonly outline: Outline; readonly kind: OutlineKind }[];
  readonly findings: readonly Finding[];
}

/** Farther from the ground's colour than this, in standard deviations of a cell after a mean over nine, is no ground. */
const notGround = 5;
/** A piece that is smaller than this, by its box and by its area (leastMm2), is dirt, thread or writing, mm. */
const leastAcrossMm = 30;
/** Runs of a line with gaps up to this between them are one line, mm. */
const joinedMm = 8;
/** A line is nowhere thicker than this, mm; a piece somewhere is. */
const thickestLineMm = 2.4;
/** Contrast along an edge below which its place is uncertain, in standard deviations of a cell. */
const weakContrast = 6;

/** Outlines of what lies or is drawn in the window, largest first; mm on the plane as printed. Paints over the joint of the sheets in `flat`. */
export function findOutlines(flat: FlatPicture, joint: SheetJoint): FoundOutlines {
  const ground = groundOf(flat);
  const far = farFromGround(flat, ground);
  clearJointInto(flat, far, ground, joint, notGround);
  const { width, height, stepMm } = flat;
  const { labels, parts } = partsOf({ width, height, on: above(far, notGround) }, 8);
  // A faint line is many short runs: single cells are no ink.
  const seen = parts.filter((p) => p.cells * stepMm * stepMm > 0.3);
  const findings: Finding[] = [];
  const outlines: { outline: Outline; kind: OutlineKind; area: number }[] = [];
  const rim = Math.ceil(3 / stepMm);
  let cutOff = 0, faint = 0;
  const add = (loop: Float64Array, kind: OutlineKind): void => {
    const xy = smoothLoop(loop.map((v, k) => (k % 2 === 0 ? flat.minX : flat.minY) + v * stepMm), { stepMm: 0.5, reachMm: kind === "cut piece" ? 0.9 : 2 });
    const area = areaOf(xy);
    if (area >= leastMm2) outlines.push({ outline: { xy }, kind, area });
  };
  const lines: Part[] = [];
  for (const part of seen) {
    const boxMm = Math.max(part.maxI - part.minI, part.maxJ - part.minJ) * stepMm;
    const cutting = cutOut(labels, width, part, boxMm < leastAcrossMm ? 0 : rim);
    if (boxMm <= thickestLineMm || 2 * depthOf(cutting).reduce((a, b) => Math.max(a, b), 0) * stepMm <= thickestLineMm) {
      lines.push(part);
      continue;
    }
    if (boxMm < leastAcrossMm) continue;
    if (part.minI === 0 || part.minJ === 0 || part.maxI === width - 1 || part.maxJ === height - 1) {
      if (part.cells * stepMm * stepMm > leastMm2) cutOff++;
      continue;
    }
    const edge = edgeOfPiece(flat, ground, cutting);
    if (!edge) continue;
    const weak = weakPart(edge);
    if (weak.share > 0.25) {
      faint++;
      continue;
    }
    if (weak.share > 0.02) findings.push(finding("photo-weak-edge", { percent: 100 * weak.share, xMm: flat.minX + weak.i * stepMm, yMm: flat.minY + weak.j * stepMm }));
    add(edge.loop, "cut piece");
  }
  for (const { loop, openMm } of drawnLines(flat, far, labels, lines)) {
    if (openMm > 1) findings.push(finding("photo-line-open", { openMm }));
    add(loop, "drawn line");
  }
  if (outlines.length === 0) {
    if (cutOff > 0) throw new Refusal(finding("photo-edge-cut", {}));
    throw new Refusal(finding("photo-nothing-found", { why: faint > 0 || lines.length > 0 ? "too like the ground" : "nothing" }));
  }
  if (cutOff > 0) findings.push(finding("photo-edge-left-out", { pieces: cutOff }));
  outlines.sort((a, b) => b.area - a.area);
  return { outlines, findings };
}

/** Thin parts taken together, so that a line broken into several is one again, then told apart by what they enclose. */
function drawnLines(flat: FlatPicture, far: Float32Array, labels: Int32Array, lines: readonly Part[]) {
  const { width, height, stepMm } = flat;
  if (lines.length === 0) return [];
  const thin = new Uint8Array(lines.reduce((most, p) => Math.max(most, p.label), 0) + 1);
  for (const { label } of lines) thin[label] = 1;
  const on = new Uint8Array(labels.length);
  for (let k = 0; k < on.length; k++) on[k] = thin[labels[k]!] ?? 0;
  const near = distanceFrom({ width, height, on });
  const reach = joinedMm / 2 / stepMm;
  const joined = partsOf({ width, height, on: upTo(near, reach) }, 8);
  return joined.parts.flatMap((part) => {
    const grown = cutOut(joined.labels, width, part, Math.ceil(6 / stepMm));
    if (Math.max(part.maxI - part.minI, part.maxJ - part.minJ) * stepMm < leastAcrossMm) return [];
    const own = new Uint8Array(grown.on.length);
    for (let j = 0, k = 0; j < grown.height; j++) for (let i = 0; i < grown.width; i++, k++) {
      if (grown.on[k] === 1 && on[(j + grown.fromJ) * width + i + grown.fromI] === 1) own[k] = 1;
    }
    const line = middleOfLine(flat, far, notGround, { ...grown, on: own });
    return line && Math.abs(areaOf(line.loop)) * stepMm * stepMm >= leastMm2 ? [line] : [];
  });
}

/** Share of an edge whose contrast is weak, and the cell where it is weakest. */
function weakPart({ loop, contrast }: PieceEdge): { share: number; i: number; j: number } {
  let count = 0, worst = 0;
  contrast.forEach((c, k) => {
    if (c < weakContrast) count++;
    if (c < contrast[worst]!) worst = k;
  });
  return { share: count / contrast.length, i: loop[2 * worst]!, j: loop[2 * worst + 1]! };
}
