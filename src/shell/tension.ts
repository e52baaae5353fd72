import { finding, type Finding } from "#base/findings.ts";
import { Refusal } from "#base/refusal.ts";
import { distanceInSpace } from "#flatten/distance.ts";
import type { Flattening } from "#flatten/flatten.ts";
import { halves, type Half } from "#lines/feather.ts";
import type { Rule } from "#lines/lines.ts";
import { edgeLength, flatLength } from "./edge-length.ts";
import type { Leather, ShellRules, ShellSettings } from "./settings.ts";
import type { FlatShell, Shell, ToplineTension } from "./shell.ts";

export type ByHalf<T> = Readonly<Record<Half, T>>;

export const toplineOf = ({ edges }: Shell, half: Half): Uint32Array => (half === "medial" ? edges.toplineMedial : edges.toplineLateral);

/** The most that a topline may be shortened at all, as a share. */
export const mostShorter = 0.08;

/**
 * Lengths that the topline's halves come to on the card: shorter than on the last itself by a share.
 * @throws Refusal `topline-shorter-impossible` below 0 and above {@link mostShorter}
 */
export function toplineAsked(onLast: Shell, toplineShorter: number): ByHalf<number> {
  if (!(toplineShorter >= 0 && toplineShorter <= mostShorter)) throw new Refusal(finding("topline-shorter-impossible", { percent: 100 * toplineShorter, mostPercent: 100 * mostShorter }));
  const of = (half: Half): number => edgeLength(onLast.mesh.positions, toplineOf(onLast, half)) * (1 - toplineShorter);
  return { medial: of("medial"), lateral: of("lateral") };
}

/** A laid shell and the share of its length that each true edge was asked to come to. */
export interface Drawn {
  readonly flat: Flattening;
  readonly scale: Float64Array;
  /** How much shorter still than asked each half had to be asked to be, mm. */
  readonly extraMm: ByHalf<number>;
}

export const noExtra: ByHalf<number> = { medial: 0, lateral: 0 };

/** How near to the asked length a half must come, mm (0.1 mm would move the heel ends by 0.6 mm), and how often it is asked again. */
const nearEnoughMm = 0.03;
const mostRounds = 4;
/** A shell gives about a twentieth less than is asked (4 to 6 % on three lasts, for 2 to 4 %): asked for beforehand, one round is often enough. */
const more = 1.05;

/**
 * Brings the topline to length: its edges, which `lay` holds to a scale of their length, are asked to be shorter, and for more where
 * the shell gives less, `extraMm` to begin with. `edges` is the number of all held edges; the topline's come first, inner half before outer.
 * @throws Refusal `topline-cannot-be-drawn` where an edge would have to be drawn together to nothing, or the sheet does not come to rest
 */
export function drawTopline(shell: Shell, toplineMm: ByHalf<number>, edges: number, lay: (scale: Float64Array, like?: Flattening) => Flattening, extraMm?: ByHalf<number>): Drawn {
  const p = shell.mesh.positions;
  const drawn = halves.map((half) => {
    const asked = edgeLength(p, toplineOf(shell, half)) - toplineMm[half];
    return { ...toplineShares(shell, half), toMm: toplineMm[half], asked, byMm: asked + (extraMm?.[half] ?? (more - 1) * asked) };
  });
  let flat: Flattening | undefined;
  for (let round = 1; ; round++) {
    const scale = new Float64Array(edges).fill(1);
    let at = 0;
    for (const { shares, byMm, sumMm } of drawn) for (const share of shares) scale[at++] = 1 - (byMm * share) / sumMm;
    const wholeMm = drawn.reduce((sum, { byMm }) => sum + byMm, 0);
    // No edge can be drawn together to nothing.
    if (!scale.every((share) => share > 0)) throw new Refusal(finding("topline-cannot-be-drawn", { byMm: wholeMm }));
    flat = atRest(() => lay(scale, flat), wholeMm);
    const laid = flat;
    const off = drawn.map(({ ids, toMm }) => flatLength(laid, ids) - toMm);
    if (round === mostRounds || off.every((mm) => Math.abs(mm) < nearEnoughMm)) {
      const [medial, lateral] = drawn.map(({ byMm, asked }) => byMm - asked) as [number, number];
      return { flat: laid, scale, extraMm: { medial, lateral } };
    }
    drawn.forEach((half, i) => (half.byMm += off[i]!));
  }
}

/** A sheet that will not come to rest has been drawn too far: that is what can be changed about it. */
function atRest(lay: () => Flattening, byMm: number): Flattening {
  try {
    return lay();
  } catch (error) {
    if (error instanceof Refusal && error.finding.code === "surface-does-not-settle") throw new Refusal(finding("topline-cannot-be-drawn", { byMm }));
    throw error;
  }
}

/** Shares of a half's length from the back point: nothing is drawn at the back point, all of it along heel and waist, nothing round the throat. */
const drawnAlong = { from: 0.02, full: 0.12, fullTo: 0.62, to: 0.9 } as const;

/** How much each edge of a half's topline is drawn together against the rest, 0 to 1, and the sum of share × length, mm. */
export function toplineShares(shell: Shell, half: Half): { readonly ids: Uint32Array; readonly shares: Float64Array; readonly sumMm: number } {
  const p = shell.mesh.positions;
  const ids = toplineOf(shell, half);
  const total = edgeLength(p, ids);
  let along = 0, sumMm = 0;
  const shares = Float64Array.from({ length: ids.length - 1 }, (_, k) => {
    const mm = distanceInSpace(p, ids[k]!, ids[k + 1]!);
    const u = (along + mm / 2) / total;
    along += mm;
    const share = eased((u - drawnAlong.from) / (drawnAlong.full - drawnAlong.from)) * eased((drawnAlong.to - u) / (drawnAlong.to - drawnAlong.fullTo));
    sumMm += share * mm;
    return share;
  });
  return { ids, shares, sumMm };
}

/** 6t⁵ − 15t⁴ + 10t³ between 0 and 1, held beyond: no step in value, slope or bend. */
export function eased(at: number): number {
  const t = Math.min(1, Math.max(0, at));
  return t * t * t * (t * (6 * t - 15) + 10);
}

export function tensionOf(shell: Shell, onLast: Shell, uv: Float64Array, extraMm: ByHalf<number>): ByHalf<ToplineTension> {
  const p = shell.mesh.positions;
  const of = (half: Half): ToplineTension => {
    const ids = toplineOf(shell, half);
    let mostStretch = 0;
    for (let k = 1; k < ids.length; k++) mostStretch = Math.max(mostStretch, distanceInSpace(p, ids[k - 1]!, ids[k]!) / flatLength({ uv }, ids.subarray(k - 1, k + 1)) - 1);
    return { onLastMm: edgeLength(onLast.mesh.positions, ids), overMm: edgeLength(p, ids), flatMm: flatLength({ uv }, ids), mostStretch, extraMm: extraMm[half] };
  };
  return { medial: of("medial"), lateral: of("lateral") };
}

/** Most that a half may miss its length, mm (common practice, no source). */
const missMm = 1;
/** What a strip of the leather gives along its tight way under a firm pull by hand, most, as shares (common practice, no source). */
const handPull: Readonly<Record<Leather, number>> = { kid: 0.07, firm: 0.06, soft: 0.15 };

/** Numbers outside their usual range. */
export function judgeShellSettings(rules: ShellRules, settings: ShellSettings): readonly Finding[] {
  return Object.entries(rules)
    .map(([key, { name, min, max, unit }]: [string, Rule]) => ({ name, min, max, value: settings[key as keyof ShellRules], unit: unit === "share" ? ("share" as const) : ("mm" as const) }))
    .filter(({ value, min, max }) => value < min - 1e-9 || value > max + 1e-9)
    .map((unusual) => finding("shell-setting-unusual", unusual));
}

/** Whether the topline came to its length, and what that asks of the leather. */
export function judgeTension({ tension, springMm }: FlatShell, { toplineShorter, leather }: ShellSettings): readonly Finding[] {
  const findings: Finding[] = [];
  for (const half of halves) {
    const { onLastMm, flatMm } = tension[half];
    const askedMm = onLastMm * toplineShorter, gotMm = onLastMm - flatMm;
    if (Math.abs(gotMm - askedMm) > missMm) findings.push(finding("topline-not-reached", { half, askedMm, gotMm }));
  }
  const stretch = Math.max(tension.medial.mostStretch, tension.lateral.mostStretch);
  if (stretch > handPull[leather]) findings.push(finding("topline-stretches-far", { percent: 100 * stretch, mostPercent: 100 * handPull[leather] }));
  if (springMm !== 0 && toplineShorter === 0) findings.push(finding("spring-alone", { springMm }));
  return findings;
}
