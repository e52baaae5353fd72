import { flatLength } from "#shell/lay-flat.ts";
import type { HeightMark } from "#lines/lines.ts";
import type { CommonSheet } from "./arrange.ts";
import type { LastInput } from "./input.ts";
import { findingReport, measureReport } from "./measure-report.ts";
import { utf8 } from "./text-bytes.ts";

/** Raised when a field changes its meaning or goes; new fields alone do not raise it. Described in docs/report.md. */
const reportVersion = 1;

/** A tenth of a micrometre: finer than any use, coarse enough to read. */
export const round = (v: number): number => Math.round(v * 1e4) / 1e4;

/** The report of one pair as plain data. Field by field: docs/report.md. */
export function reportOf(input: LastInput, sheet: CommonSheet) {
  const { last, lines, flat } = input;
  const height = (m: HeightMark) => ({ share: round(m.share), alongFeatherMm: round(m.alongFeatherMm), target: round(m.heightMm) });
  const arcEnd = (arc: Float64Array) => arc[arc.length - 1]!;
  return {
    version: reportVersion,
    title: input.title,
    size: input.size,
    last: measureReport(last),
    shell: {
      triangles: flat.shell.mesh.triangles.length / 3,
      toplineOnLastMm: round(arcEnd(lines.toplineMedial.arc) + arcEnd(lines.toplineLateral.arc)),
      toplineFlatMm: round(flatLength(flat, flat.shell.edges.toplineMedial) + flatLength(flat, flat.shell.edges.toplineLateral)),
      springMm: round(flat.springMm),
      strain: flat.strain,
      strainUnsprung: flat.unsprung,
    },
    sheet: { widthMm: round(sheet.widthMm), heightMm: round(sheet.heightMm) },
    pieces: sheet.placed.map(({ piece, place }) => ({
      name: piece.name,
      side: piece.side,
      material: piece.material,
      perPair: piece.perPair,
      net: piece.net,
      areaMm2: round(piece.areaMm2),
      perimeterMm: round(piece.perimeterMm),
      directionDeg: round(piece.directionDeg),
      outlineMm: pairs(piece.outline.xy),
      placement: place,
    })),
    pieceSettings: input.pieceSettings,
    lasting: {
      throatDepthMm: { target: round(lines.settings.throatDepthMm) },
      backHeightMm: { target: round(lines.settings.backHeightMm) },
      sideHeightsMm: {
        medial: { lowest: height(lines.lowestMedial), quarters: lines.quarterHeights.medial.map(height) },
        lateral: { lowest: height(lines.lowestLateral), quarters: lines.quarterHeights.lateral.map(height) },
      },
    },
    findings: input.findings.map(findingReport),
    timesMs: input.timesMs,
  };
}

export function reportJson(input: LastInput, sheet: CommonSheet): Uint8Array {
  return utf8(`${JSON.stringify(reportOf(input, sheet))}\n`);
}

/** x0 y0 … as [x, y] pairs. */
function pairs(xy: Float64Array): readonly (readonly [number, number])[] {
  const out: [number, number][] = [];
  for (let i = 0; i < xy.length; i += 2) out.push([round(xy[i]!), round(xy[i + 1]!)]);
  return out;
}
