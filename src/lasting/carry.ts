import { finding } from "#base/findings.ts";
import { framesOf } from "#flatten/frames.ts";
import { principalStretches } from "#flatten/principal.ts";
import { flatLength } from "#shell/edge-length.ts";
import { edgeWeightPerMm, type LaidOnLast } from "#shell/lay-flat.ts";
import { inFrame } from "#shell/panel-frame.ts";
import type { LaidPanel, PanelEdge } from "#shell/panel.ts";
import type { LaidPanels, SeamBanks } from "#shell/panels.ts";
import type { Shell } from "#shell/shell.ts";
import { summarise } from "#shell/strain.ts";
import type { Corrected } from "./correct.ts";
import { layShrunk, type SharedEdges } from "./shrunk-triangles.ts";
import { stretchAt, type SheetAt } from "./stretch-field.ts";

/** How firmly edges come to the share of their length that the upper comes to there, against their triangles, as where a shell is laid flat; an average area stands for all. */
const firm = 0.2 * edgeWeightPerMm;

/** The lining (or any sheet of the very same triangles) as it is to be cut with the corrected upper. */
export function carriedLining(corrected: Corrected, lining: LaidOnLast): LaidOnLast {
  const { edges } = lining.onLast, sheet = { onLast: lining.onLast.mesh, uv: lining.uv };
  const stretch = stretchAt(corrected, sheet);
  const rows = [edges.toplineMedial, edges.toplineLateral, edges.backMedial, edges.backLateral, edges.centre];
  const uv = layShrunk(lining.uv, sheet.onLast.triangles, stretch, sharesOf(rows, sheet, (k) => ownShare(sheet, stretch, k)));
  return uv ? { ...lining, uv: inShellFrame(uv, edges) } : lining;
}

/** A panel or a heel part as it is to be cut with the corrected upper, in its own frame. */
export function carriedPanel(corrected: Corrected, laid: LaidPanel, shareOf?: (a: number, b: number) => number | undefined): LaidPanel {
  const { panel } = laid, sheet = { onLast: panel.onLast, uv: laid.uv };
  const stretch = stretchAt(corrected, sheet);
  const rows = [...heldRows(panel.edges), ...(panel.centre ? [panel.centre] : [])];
  const share = (k: EdgeAt): number => shareOf?.(panel.source[k.a]!, panel.source[k.b]!) ?? ownShare(sheet, stretch, k);
  const uv = layShrunk(laid.uv, panel.onLast.triangles, stretch, sharesOf(rows, sheet, share));
  if (!uv) return laid;
  const principal = principalStretches(framesOf(panel.over.positions, panel.over.triangles), panel.over.triangles, uv);
  const strain = summarise(panel.over, principal.stretchMax, principal.stretchMin);
  return inFrame({ ...laid, uv, stretchMax: principal.stretchMax, stretchMin: principal.stretchMin, strain });
}

/** All panels of a cut; both banks of a seam come to one share of their length. */
export function carriedPanels(corrected: Corrected, laid: LaidPanels): LaidPanels {
  const sums = new Map<string, readonly [sum: number, count: number]>();
  for (const { panel, uv } of laid.panels) {
    const sheet = { onLast: panel.onLast, uv }, stretch = stretchAt(corrected, sheet);
    for (const { a, b, t } of edgesAt(panel.edges.filter(({ seam }) => seam !== undefined).map(({ vertices }) => vertices), sheet)) {
      const key = keyOf(panel.source[a]!, panel.source[b]!), [sum, count] = sums.get(key) ?? [0, 0];
      sums.set(key, [sum + ownShare(sheet, stretch, { a, b, t }), count + 1]);
    }
  }
  const shareOf = (a: number, b: number): number | undefined => {
    const found = sums.get(keyOf(a, b));
    return found && found[0] / found[1];
  };
  const panels = laid.panels.map((panel) => carriedPanel(corrected, panel, shareOf));
  const banks = banksOf(panels);
  const apart = banks.filter(({ lengthsMm: [a, b] }) => Math.abs(a - b) > bankMissMm).map(({ seam, lengthsMm: [a, b] }) => finding("seam-banks-differ", { seam, differenceMm: a - b }));
  return { ...laid, panels, banks, findings: [...laid.findings.filter(({ code }) => code !== "seam-banks-differ"), ...apart] };
}

/** As where panels are laid: less than this is lost in cutting, mm. */
const bankMissMm = 0.5;

const keyOf = (a: number, b: number): string => (a < b ? `${a} ${b}` : `${b} ${a}`);

const heldRows = (edges: readonly PanelEdge[]): readonly Uint32Array[] => edges.filter(({ role }) => role !== "feather" && role !== "end").map(({ vertices }) => vertices);

function banksOf(panels: readonly LaidPanel[]): readonly SeamBanks[] {
  const found = new Map<string, number[]>();
  for (const { panel, uv } of panels) for (const { seam, vertices } of panel.edges) if (seam !== undefined) found.set(seam, [...(found.get(seam) ?? []), flatLength({ uv }, vertices)]);
  return [...found].map(([seam, mm]) => ({ seam, lengthsMm: [mm[0]!, mm[1]!] }));
}

/** An edge and a triangle at it. */
interface EdgeAt {
  readonly a: number;
  readonly b: number;
  readonly t: number;
}

function edgesAt(rows: readonly Uint32Array[], { onLast: { triangles } }: SheetAt): readonly EdgeAt[] {
  const at = new Map<string, number>();
  for (let k = 0; k < triangles.length; k++) {
    const key = keyOf(triangles[k]!, triangles[k % 3 === 2 ? k - 2 : k + 1]!);
    if (!at.has(key)) at.set(key, Math.floor(k / 3));
  }
  return rows.flatMap((row) => Array.from(row.subarray(1), (b, k) => ({ a: row[k]!, b, t: at.get(keyOf(row[k]!, b))! })));
}

/** What an edge comes to by the stretch of its triangle, as a share of its length. */
function ownShare({ uv }: SheetAt, stretch: Float64Array, { a, b, t }: EdgeAt): number {
  const x = uv[2 * b]! - uv[2 * a]!, y = uv[2 * b + 1]! - uv[2 * a + 1]!;
  const [u11, u22, u12] = [stretch[3 * t]!, stretch[3 * t + 1]!, stretch[3 * t + 2]!];
  const [p, q] = [u11 * x + u12 * y, u12 * x + u22 * y];
  return Math.sqrt((p * p + q * q) / (x * x + y * y));
}

function sharesOf(rows: readonly Uint32Array[], sheet: SheetAt, share: (edge: EdgeAt) => number): SharedEdges {
  const edges = edgesAt(rows, sheet);
  return { a: Uint32Array.from(edges, ({ a }) => a), b: Uint32Array.from(edges, ({ b }) => b), share: Float64Array.from(edges, share), perMm: firm };
}

/** Toe point to the origin, throat → toe along +x. */
function inShellFrame(uv: Float64Array, { centre }: Shell["edges"]): Float64Array {
  const toe = 2 * centre[0]!, throat = 2 * centre[centre.length - 1]!;
  const dx = uv[toe]! - uv[throat]!, dy = uv[toe + 1]! - uv[throat + 1]!, size = Math.sqrt(dx * dx + dy * dy);
  const out = new Float64Array(uv.length);
  for (let i = 0; i < uv.length; i += 2) {
    const x = uv[i]! - uv[toe]!, y = uv[i + 1]! - uv[toe + 1]!;
    out[i] = (x * dx + y * dy) / size + 0;
    out[i + 1] = (y * dx - x * dy) / size + 0;
  }
  return out;
}
