import type { Last, Point3, SurfaceCurve } from "#last/last.ts";
import { curveOf } from "#last/surface-curve.ts";
import { featherHalf, footAtX, type Half } from "#lines/feather.ts";
import type { HeightMark, Lines } from "#lines/lines.ts";
import { usualSheets } from "#sheets/choices.ts";
import { usualParts } from "#pieces/choices.ts";
import { pieceRulesFor, pieceSettingsFrom } from "#pieces/rules.ts";
import type { LastInput } from "#sheets/input.ts";
import { shellRulesFor, shellSettingsFrom } from "#shell/rules.ts";
import { noStrain, type FlatShell, type Shell } from "#shell/shell.ts";
import { sampleMaking } from "./sample-making.ts";
import { samplePieces } from "./sample-pieces.ts";

// A last and its lines by formula, invented, only so far as the sheets ask for them; nothing about it is measured.

const length = 250;
const halfWidth = (x: number): number => 38 * Math.sqrt(Math.max(0, (x / length) * (1 - x / length))) * (1.5 + 0.5 * (x / length));

function featherPoints(): { readonly points: Float64Array; readonly toeIndex: number } {
  const half: Point3[] = [];
  const n = 200;
  for (let i = 0; i <= n; i++) {
    const x = (length * (1 - Math.cos((Math.PI * i) / n))) / 2;
    half.push([x, halfWidth(x), 8]);
  }
  const back = half.slice(1, -1).reverse().map(([x, y, z]): Point3 => [x, -y, z]);
  return { points: Float64Array.from([...half, ...back].flat()), toeIndex: n };
}

const curve = (count: number, at: (t: number) => Point3): SurfaceCurve => curveOf(Array.from({ length: count + 1 }, (_, i) => at(i / count)).flat());

export function sampleLast(): Last {
  const feather = featherPoints();
  const toePoint: Point3 = [length, 0, 8], seatPoint: Point3 = [0, 0, 8];
  const at = (x: number, sign: 1 | -1): Point3 => [x, sign * halfWidth(x), 8];
  return {
    name: "formula last",
    source: "measures",
    side: "right",
    mesh: { positions: new Float64Array(0), triangles: new Uint32Array(0) },
    placement: { unit: "mm", unitPerMm: 1, rotation: [1, 0, 0, 0, 1, 0, 0, 0, 1], translationMm: [0, 0, 0] },
    feather: { ...feather, confidence: new Float64Array(feather.points.length / 3).fill(1) },
    landmarks: { toePoint, seatPoint, jointMedial: at(178, 1), jointLateral: at(160, -1), seatMedial: at(40, 1), seatLateral: at(40, -1), vampPoint: [170, 0, 50], waistPoint: [140, 0, 62], instepPoint: [110, 0, 72], counterPoint: [-7, 0, 57], treadPoint: [175, 0, 3] },
    placed: [],
    measures: { stickLength: 254, lastLength: 251, jointGirth: 221, waistGirth: 215, instepGirth: 228, heelGirth: 300, ballWidth: 76, seatWidth: 52, heelHeight: 8, toeSpring: 8, featherLength: 570, featherMedial: 285, featherLateral: 285, vampPointFromToe: 92 },
    centreRidge: curve(60, (t) => [length - 170 * t, 0, 8 + 90 * Math.sqrt(t)]),
    backCurve: curve(40, (t) => [-8 * Math.sin(Math.PI * t), 0, 8 + 85 * t]),
    bottomCentre: curve(40, (t) => [length * t, 0, 8 - 6 * Math.sin(Math.PI * t)]),
    findings: [],
  };
}

export function sampleLines(last: Last): Lines {
  const sign = { medial: 1, lateral: -1 } as const;
  const low = { medial: 40, lateral: 36 };
  const top = (half: Half) => curve(100, (t) => [t * 182, sign[half] * halfWidth(t * 182) * (1 - t ** 6), 64 - (64 - low[half]) * Math.sin(Math.PI * t) + 4 * t]);
  const mark = (half: Half, share: number): HeightMark => {
    const foot = footAtX(featherHalf(last.feather, half), share * 182)!;
    const height = 64 - (64 - low[half]) * Math.sin(Math.PI * share) + 4 * share - 8;
    return { share, alongFeatherMm: foot.along, heightMm: height, foot: foot.foot, at: [foot.foot[0], foot.foot[1], 8 + height] };
  };
  return {
    settings: { throatDepthMm: 70, backHeightMm: 56, sideHeightMedialMm: 40, sideHeightLateralMm: 36, lowestAtMedial: 0.5, lowestAtLateral: 0.5, throatRadiusMm: 24 },
    toplineMedial: top("medial"),
    toplineLateral: top("lateral"),
    centre: curve(40, (t) => [length - 68 * t, 0, 8 + 57 * Math.sqrt(t)]),
    back: curve(20, (t) => [-5 * t, 0, 8 + 56 * t]),
    quarterHeights: { medial: [0.25, 0.5, 0.75].map((s) => mark("medial", s)), lateral: [0.25, 0.5, 0.75].map((s) => mark("lateral", s)) },
    lowestMedial: mark("medial", 0.52),
    lowestLateral: mark("lateral", 0.48),
    findings: [],
  };
}

/** Two triangles, flat. */
function sampleFlat(): FlatShell {
  const edge = Uint32Array.of(0, 1);
  const shell: Shell = {
    mesh: { positions: Float64Array.of(0, 0, 0, 100, 0, 0, 0, 100, 0, 100, 100, 0), triangles: Uint32Array.of(0, 1, 2, 2, 1, 3) },
    edges: { featherMedial: edge, featherLateral: edge, backMedial: edge, backLateral: edge, toplineMedial: Uint32Array.of(0, 1, 3), toplineLateral: edge, centre: edge },
  };
  return {
    shell,
    onLast: shell,
    tension: { medial: { onLastMm: 205, overMm: 208, flatMm: 200.4, mostStretch: 0.06, extraMm: 0.2 }, lateral: { onLastMm: 204, overMm: 207, flatMm: 199.4, mostStretch: 0.06, extraMm: 0.2 } },
    uv: Float64Array.of(0, 0, 100, 0, 0, 100, 100, 100),
    stretchMax: Float64Array.of(1, 1),
    stretchMin: Float64Array.of(1, 1),
    strain: { p50: 0.01, p95: 0.03, max: 0.05, give: 0.04, gather: 0.05 },
    springMm: 4,
    unsprung: noStrain,
    findings: [],
  };
}

export function samplePair(change: Partial<LastInput> = {}): LastInput {
  const last = sampleLast();
  const pieces = samplePieces(), pieceSettings = pieceSettingsFrom(pieceRulesFor(last));
  return {
    from: "last",
    title: "Formula pump",
    size: "38",
    choices: usualSheets,
    strips: [],
    stitching: [],
    making: sampleMaking({ pieces, settings: pieceSettings }),
    parts: usualParts,
    edge: "taped",
    last,
    lines: sampleLines(last),
    shellSettings: shellSettingsFrom(shellRulesFor(last)),
    beneath: [{ key: "topline", half: "medial", onLastMm: 205, overMm: 208 }, { key: "back", onLastMm: 55, overMm: 56.25 }],
    flat: sampleFlat(),
    pieces,
    pieceSettings,
    findings: [],
    timesMs: {},
    ...change,
  };
}
