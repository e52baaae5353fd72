import { rightNormal } from "#plane/edge-offset.ts";
import { area } from "#plane/measure.ts";
import type { Draft } from "../draft.ts";
import type { NetPanel } from "../panel.ts";
import type { Xy } from "../piece.ts";
import { Boxed, type Place } from "../boxed.ts";
import type { ToCheck } from "./to-check.ts";

/** About how far apart the widths are taken, mm. */
const everyMm = 1.6;
/** Farther out than any allowance may be (check.ts), mm. */
const reachMm = 110;
/** Nearer than this a point lies on the cutting line, mm. */
const onLineMm = 0.01;

/** How far the cutting line lies outside an edge, square to it, at points along it. */
export interface EdgeWidths {
  readonly s: Float64Array;
  /** NaN where the cutting line is not met. */
  readonly mm: Float64Array;
  /** Where the cutting line is met: its running length. */
  readonly on: Float64Array;
  /** Cosine of the angle between edge and cutting line there: at a corner another edge's cutting line is met. */
  readonly alike: Float64Array;
  /** The points of the edge and the unit directions outward, x y …. */
  readonly points: Float64Array;
  readonly outward: Float64Array;
}

/** A panel with the piece that was cut from it, and the widths of its allowances as they are drawn. */
export interface CutPanel {
  readonly panel: NetPanel;
  readonly draft: Draft;
  readonly cut: Boxed;
  readonly widths: readonly EdgeWidths[];
}

/** Each panel with its piece; a panel that no piece of upper leather was cut from is left out. */
export function cutPanels(panels: readonly NetPanel[], drafts: readonly Draft[]): readonly CutPanel[] {
  return panels.flatMap((panel) => {
    const draft = pieceOf(panel, drafts);
    if (!draft) return [];
    const cut = new Boxed(draft.outline);
    return [{ panel, draft, cut, widths: panel.edges.map(({ line, arc }) => widthsOf(line.xy, arc, cut)) }];
  });
}

/** The largest piece of upper leather of the panel's ground: a toe cap or a tab may share it. */
function pieceOf({ name }: NetPanel, drafts: readonly Draft[]): Draft | undefined {
  const own = drafts.filter((d) => !d.net && d.material === "upper leather" && (d.ground ?? (d.name === "upper" ? "upper" : undefined)) === name);
  return own.length < 2 ? own[0] : own.reduce((a, b) => (area(b.outline) > area(a.outline) ? b : a));
}

function widthsOf(xy: Float64Array, arc: Float64Array, cut: Boxed): EdgeWidths {
  const picked = spaced(arc);
  const n = picked.length;
  const out = { s: new Float64Array(n), mm: new Float64Array(n), on: new Float64Array(n), alike: new Float64Array(n), points: new Float64Array(2 * n), outward: new Float64Array(2 * n) };
  for (let k = 0; k < n; k++) {
    const i = picked[k]!;
    const [x, y] = [xy[2 * i]!, xy[2 * i + 1]!];
    const normal = rightNormal(xy, i, false);
    const hit = outFrom(cut, x, y, normal);
    out.s[k] = arc[i]!;
    out.mm[k] = hit?.mm ?? Number.NaN;
    out.on[k] = hit?.s ?? Number.NaN;
    const way = hit ? cut.directionAt(hit.s) : normal;
    out.alike[k] = normal[0] * way[1] - normal[1] * way[0];
    out.points.set([x, y], 2 * k);
    out.outward.set(normal, 2 * k);
  }
  return out;
}

/** Where the way out from a point meets the cutting line. A point on it, as the corner beside an edge that is cut net, may still have the piece before it. */
function outFrom(cut: Boxed, x: number, y: number, [nx, ny]: Xy): Place | undefined {
  const hit = cut.along(x, y, nx, ny, reachMm);
  if (!hit || hit.mm > onLineMm || !cut.holds(x + 2 * onLineMm * nx, y + 2 * onLineMm * ny)) return hit;
  const next = cut.along(x + 2 * onLineMm * nx, y + 2 * onLineMm * ny, nx, ny, reachMm);
  return next && { ...next, mm: next.mm + 2 * onLineMm };
}

/** Numbers of an edge's points, both ends among them, at least `everyMm` apart. */
function spaced(arc: Float64Array): readonly number[] {
  const last = arc.length - 1;
  const out = [0];
  for (let i = 1; i < last; i++) if (arc[i]! - arc[out[out.length - 1]!]! >= everyMm && arc[last]! - arc[i]! > everyMm / 2) out.push(i);
  return [...out, last];
}

/** How far from its end an edge is made by the rule of its corner, mm: by its own allowance, and the tongue that may stand there. */
export const cornerReach = (allowanceMm: number, tailMm: number): number => 1.5 * allowanceMm + 5 + 1.5 * tailMm;

/** The tongue of a dog-tail, where one is asked for, mm. */
export const tailReach = ({ chosen, settings }: ToCheck): number => (chosen.backTop === "dog-tail" ? Math.max(settings.dogTailLongMm, settings.dogTailWideMm) : 0);

export const pointOf = (w: EdgeWidths, k: number): Xy => [w.points[2 * k]!, w.points[2 * k + 1]!];

/** The width at a running length; NaN where there is none. */
export function widthNear({ s, mm }: EdgeWidths, at: number): number {
  let k = 1;
  while (k < s.length - 1 && s[k]! < at) k++;
  const t = Math.min(1, Math.max(0, (at - s[k - 1]!) / (s[k]! - s[k - 1]!)));
  return mm[k - 1]! + t * (mm[k]! - mm[k - 1]!);
}
