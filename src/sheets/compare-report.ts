import type { LastComparison } from "#last/compare.ts";
import type { FootMeasures } from "#last/foot-measures.ts";
import type { Foot } from "#last/foot.ts";
import type { Measures, Placement, Point3, Side } from "#last/last.ts";
import { findingReport, inFile, type FindingReport } from "./measure-report.ts";
import { rounded } from "./report-number.ts";

/** Two lasts held against each other as `measure --beside --json` prints it, mm. Described in docs/report.md. */
export interface CompareReport {
  readonly verdict: LastComparison["verdict"];
  readonly pair: boolean;
  readonly mirrored: boolean;
  readonly surface: { readonly meanMm: number; readonly rmsMm: number; readonly p95Mm: number; readonly maxMm: number; readonly where: string };
  readonly feather: { readonly rmsMm: number; readonly maxMm: number; readonly where: string };
  readonly differences: Measures;
  readonly findings: readonly FindingReport[];
}

export function compareReport({ verdict, pair, mirrored, surface, feather, differences, findings }: LastComparison): CompareReport {
  const { meanMm, rmsMm, p95Mm, maxMm, where } = surface;
  return rounded({
    verdict,
    pair,
    mirrored,
    surface: { meanMm, rmsMm, p95Mm, maxMm, where },
    feather: { rmsMm: feather.rmsMm, maxMm: feather.maxMm, where: feather.where },
    differences,
    findings: findings.map(findingReport),
  });
}

/** A foot as `measure --json` prints it: lengths in mm, points in the file's own coordinates and unit. */
export interface FootReport extends FootMeasures {
  readonly kind: "foot";
  readonly name: string;
  readonly unit: Placement["unit"];
  readonly side: Side;
  readonly level: Foot["level"];
  readonly heel: Point3;
  readonly lowerHeel: Point3;
  readonly front: Point3;
  readonly innermost: Point3;
  readonly outermost: Point3;
  readonly toes: readonly Point3[] | null;
  readonly findings: readonly FindingReport[];
}

export function footReport(name: string, { side, placement, level, points, measures, findings }: Foot): FootReport {
  const at = (p: Point3): Point3 => inFile(p, placement);
  const { heel, lowerHeel, front, innermost, outermost, toes } = points;
  return {
    kind: "foot",
    name,
    unit: placement.unit,
    side,
    level,
    ...rounded(measures),
    heel: at(heel),
    lowerHeel: at(lowerHeel),
    front: at(front),
    innermost: at(innermost),
    outermost: at(outermost),
    toes: toes ? toes.map(at) : null,
    findings: findings.map(findingReport),
  };
}
