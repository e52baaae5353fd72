import { finding, type Finding } from "#base/findings.ts";
import { medialSign, type Last, type Point3 } from "#last/last.ts";
import { curveOf, pointOn } from "#last/surface-curve.ts";
import { EdgeSearch } from "./edge-search.ts";
import { beneathRows, type BeneathRow } from "./girths.ts";
import { lifted } from "./lift.ts";
import type { ShellSettings } from "./settings.ts";
import type { Shell } from "./shell.ts";
import { withTape } from "./tape-over.ts";
import { eased } from "./tension.ts";

/** Thicknesses of what the pieces are cut from, mm; of the pieces' settings. */
export interface Thicknesses {
  readonly upperThicknessMm: number;
  readonly liningThicknessMm: number;
  readonly toePuffMm: number;
  /** 0 where there is no side lining. */
  readonly sideLiningMm: number;
}

/** How far a side lining stands above the feather line, stays below the topline and lies over stiffener and puff, mm. */
export interface SideLiningSizes {
  readonly sideLiningHeightMm: number;
  readonly sideLiningBelowMm: number;
  readonly sideLiningLapMm: number;
}

/** What of it is said by the pieces' settings. */
export type PiecesBeneath = Thicknesses & SideLiningSizes;

export type BeneathSettings = PiecesBeneath & Pick<ShellSettings, "counterMm" | "counterBelowMm" | "counterInnerMm" | "counterOuterMm" | "puffReachMm" | "skiveMm" | "skiveFeatherMm">;

/** `sideLining`: whether there is one. */
export function beneathFrom({ upperThicknessMm, liningThicknessMm, toePuffMm, sideLiningMm, sideLiningHeightMm, sideLiningBelowMm, sideLiningLapMm }: PiecesBeneath, shell: ShellSettings, sideLining = false): BeneathSettings {
  const { counterMm, counterBelowMm, counterInnerMm, counterOuterMm, puffReachMm, skiveMm, skiveFeatherMm } = shell;
  const side = { sideLiningMm: sideLining ? sideLiningMm : 0, sideLiningHeightMm, sideLiningBelowMm, sideLiningLapMm };
  return { upperThicknessMm, liningThicknessMm, toePuffMm, ...side, counterMm, counterBelowMm, counterInnerMm, counterOuterMm, puffReachMm, skiveMm, skiveFeatherMm };
}

/** The shell as the upper lies: over lining, stiffener and toe puff. */
export interface Beneath {
  readonly over: Shell;
  readonly rows: readonly BeneathRow[];
  /** How far each vertex was pushed outward: what lies beneath and half the upper itself, mm. */
  readonly heightMm: Float64Array;
  readonly findings: readonly Finding[];
}

/** What a puff must leave free before the throat, mm (common practice, no source). */
export const puffBeforeThroatMm = 12;

/**
 * The surface that the upper's middle layer lies on: the last's own, pushed outward by lining, stiffener, toe puff and side lining where
 * they are, and by half the upper. Method: docs/method/shell.md.
 */
export function layBeneath(onLast: Shell, last: Last, settings: BeneathSettings): Beneath {
  const { mesh, edges } = onLast;
  const heightMm = beneathAt(onLast, last, settings);
  const twins = Array.from(edges.backMedial).flatMap((v, i) => [v, edges.backLateral[i]!]);
  const { positions, folded } = lifted(mesh, heightMm, twins);
  const findings: Finding[] = [];
  const { reachMm } = puffOn(onLast, settings);
  if (settings.toePuffMm > 0 && reachMm < settings.puffReachMm) findings.push(finding("puff-near-throat", { askedMm: settings.puffReachMm, reachMm, leaveMm: puffBeforeThroatMm }));
  if (folded.length > 0) {
    const v = 3 * mesh.triangles[3 * folded[0]!]!;
    findings.push(finding("beneath-folds", { triangles: folded.length }, [mesh.positions[v]!, mesh.positions[v + 1]!, mesh.positions[v + 2]!]));
  }
  const over = { mesh: { positions, triangles: mesh.triangles }, edges };
  return { over, rows: withTape(beneathRows(last, onLast, over), last, onLast, over, settings.upperThicknessMm), heightMm, findings };
}

/** By how much the way round the heel, level at half the back's height, is longer over what lies beneath; mean of both halves, mm. */
export function heelLonger(rows: readonly BeneathRow[]): number {
  const heel = rows.filter(({ key }) => key === "heel");
  return heel.reduce((sum, { onLastMm, overMm }) => sum + (overMm - onLastMm) / heel.length, 0);
}

/** How thick what lies under the middle of the upper is at each vertex, mm. */
export function beneathAt({ mesh: { positions: p }, edges }: Shell, last: Last, settings: BeneathSettings): Float64Array {
  const feather = { medial: new EdgeSearch(p, edges.featherMedial), lateral: new EdgeSearch(p, edges.featherLateral) };
  const topline = [new EdgeSearch(p, edges.toplineMedial), new EdgeSearch(p, edges.toplineLateral)] as const;
  const { fromX } = puffOn({ mesh: { positions: p, triangles: new Uint32Array() }, edges }, settings);
  const sign = medialSign(last.side);
  const everywhere = settings.liningThicknessMm + settings.upperThicknessMm / 2;
  const longest = Math.max(settings.counterInnerMm, settings.counterOuterMm);
  const out = new Float64Array(p.length / 3).fill(everywhere);
  for (let v = 0; v < out.length; v++) {
    const at: Point3 = [p[3 * v]!, p[3 * v + 1]!, p[3 * v + 2]!];
    const inner = sign * at[1] >= 0;
    // No wing reaches farther along the axis than along the feather line.
    const atHeel = settings.counterMm > 0 && at[0] < last.landmarks.seatPoint[0] + longest;
    const atToe = settings.toePuffMm > 0 && at[0] > fromX;
    const atSide = settings.sideLiningMm > 0 && at[0] < fromX + settings.sideLiningLapMm;
    if (!atHeel && !atToe && !atSide) continue;
    const foot = (inner ? feather.medial : feather.lateral).nearest(at);
    const toFeather = pared(foot.distance, settings.skiveFeatherMm);
    if (atToe) out[v]! += settings.toePuffMm * toFeather * pared(at[0] - fromX, settings.skiveMm);
    const wingMm = inner ? settings.counterInnerMm : settings.counterOuterMm;
    const toEnd = atHeel ? pared(wingMm - foot.along, settings.skiveMm) * toFeather : 0;
    const side = atSide ? settings.sideLiningMm * sideEnds(settings, foot.along - wingMm, fromX - at[0]) : 0;
    if (toEnd === 0 && side === 0) continue;
    const below = Math.min(topline[0].nearest(at).distance, topline[1].nearest(at).distance);
    out[v]! += settings.counterMm * pared(below - settings.counterBelowMm, settings.skiveMm) * toEnd;
    out[v]! += side * pared(Math.min(settings.sideLiningHeightMm - foot.distance, below - settings.sideLiningBelowMm), settings.skiveFeatherMm);
  }
  return out;
}

/** A side lining is pared to nothing over its laps on stiffener and puff, so far as a place lies from the end of either; down to the feather line it is whole. */
const sideEnds = ({ sideLiningLapMm: lap }: BeneathSettings, fromWingMm: number, fromPuffMm: number): number =>
  pared(fromWingMm + lap, Math.max(lap, leastParedMm)) * pared(fromPuffMm + lap, Math.max(lap, leastParedMm));
const leastParedMm = 0.5;

/** Where the puff ends on the centre line, and the place on the axis where that is: its back edge runs straight across. */
function puffOn({ mesh: { positions: p }, edges: { centre } }: Shell, { puffReachMm }: BeneathSettings): { readonly reachMm: number; readonly fromX: number } {
  const line = curveOf(Array.from(centre).flatMap((v) => [p[3 * v]!, p[3 * v + 1]!, p[3 * v + 2]!]));
  const reachMm = Math.max(0, Math.min(puffReachMm, line.arc[line.arc.length - 1]! - puffBeforeThroatMm));
  return { reachMm, fromX: pointOn(line, reachMm)[0] };
}

/** Share of the full thickness at a distance inside the edge of what is pared to nothing there, so that nothing shows. */
const pared = (insideMm: number, widthMm: number): number => eased(insideMm / widthMm);
