import { flatLength } from "#shell/edge-length.ts";
import type { ToplineTension } from "#shell/shell.ts";
import { meanLength } from "#tape/taped-shell.ts";
import type { CommonSheet } from "./arrange.ts";
import type { LastInput, SheetInput, TapeInput } from "./input.ts";
import { lastingReport } from "./lasting-report.ts";
import { madeReport } from "./made-report.ts";
import { makingReport } from "./making-report.ts";
import { findingReport, measureReport } from "./measure-report.ts";
import { round, rounded } from "./report-number.ts";
import { tapeReport } from "./tape-report.ts";
import { utf8 } from "./text-bytes.ts";
import { triedReport } from "./tried-report.ts";

/** Raised when a field changes its meaning or goes; new fields alone do not raise it. Described in docs/report.md. */
const reportVersion = 1;

/** The report of one pair as plain data. Field by field: docs/report.md. */
export function reportOf(input: SheetInput, sheet: CommonSheet) {
  const { lasting, ...made } = input.from === "last" ? ofLast(input) : ofTape(input);
  return {
    version: reportVersion,
    title: input.title,
    size: input.size,
    ...made,
    printed: input.choices,
    sheet: { widthMm: round(sheet.widthMm), heightMm: round(sheet.heightMm) },
    pieces: sheet.placed.map(({ piece, place }) => ({
      name: piece.name,
      side: piece.side,
      material: piece.material,
      perPair: piece.perPair,
      net: piece.net,
      ...(piece.ground && { ground: piece.ground }),
      areaMm2: round(piece.areaMm2),
      perimeterMm: round(piece.perimeterMm),
      directionDeg: round(piece.directionDeg),
      outlineMm: pairs(piece.outline.xy),
      placement: place,
    })),
    strips: input.strips.map(({ name, material, widthMm, lengthMm, perPair, where }) => ({ name, material, widthMm: round(widthMm), lengthMm: round(lengthMm), perPair, where })),
    stitching: rounded(input.stitching),
    parts: input.parts,
    pieceSettings: input.pieceSettings,
    ...(input.made && { made: madeReport(input.made) }),
    lasting,
    making: makingReport(input.making),
    findings: input.findings.map(findingReport),
    timesMs: input.timesMs,
  };
}

/** A pair on a taped pattern: there is no last and no shell, and of lasting only what the tape itself says. */
function ofTape({ tape, traced }: TapeInput) {
  const mean = (of: "centre" | "back") => ({ target: round(meanLength(tape, of)) });
  return { tape: tapeReport(tape, traced), lasting: { throatDepthMm: mean("centre"), backHeightMm: mean("back") } };
}

function ofLast(input: LastInput) {
  const { last, lines, shellSettings, beneath, flat, tried } = input;
  const arcEnd = (arc: Float64Array) => arc[arc.length - 1]!;
  return {
    last: measureReport(last),
    shell: {
      triangles: flat.shell.mesh.triangles.length / 3,
      toplineOnLastMm: round(arcEnd(lines.toplineMedial.arc) + arcEnd(lines.toplineLateral.arc)),
      toplineFlatMm: round(flatLength(flat, flat.shell.edges.toplineMedial) + flatLength(flat, flat.shell.edges.toplineLateral)),
      springMm: round(flat.springMm),
      topline: { medial: toplineHalf(flat.tension.medial), lateral: toplineHalf(flat.tension.lateral) },
      beneath: beneath.map(({ key, half, onLastMm, overMm }) => ({ length: key, ...(half ? { half } : {}), onLastMm: round(onLastMm), addsMm: round(overMm - onLastMm) })),
      settings: shellSettings,
      strain: flat.strain,
      strainUnsprung: flat.unsprung,
    },
    ...(tried && { tried: triedReport(tried, last.placement) }),
    lasting: lastingReport(input),
  };
}

function toplineHalf({ onLastMm, overMm, flatMm, mostStretch }: ToplineTension) {
  return { onLastMm: round(onLastMm), overMm: round(overMm), flatMm: round(flatMm), shorterMm: round(onLastMm - flatMm), mostStretch };
}

export function reportJson(input: SheetInput, sheet: CommonSheet): Uint8Array {
  return utf8(`${JSON.stringify(reportOf(input, sheet))}\n`);
}

/** x0 y0 … as [x, y] pairs. */
function pairs(xy: Float64Array): readonly (readonly [number, number])[] {
  const out: [number, number][] = [];
  for (let i = 0; i < xy.length; i += 2) out.push([round(xy[i]!), round(xy[i + 1]!)]);
  return out;
}
