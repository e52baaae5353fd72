import { explain, severityOf, type Finding } from "#base/findings.ts";
import type { Severity } from "#base/severity.ts";
import { describeLast, type LastDescription } from "#last/describe.ts";
import type { Landmarks, Last, Measures, Placement, Point3, Side } from "#last/last.ts";
import { rounded } from "./report-number.ts";

export interface FindingReport {
  readonly code: string;
  readonly severity: Severity;
  readonly text: string;
}

/**
 * One last as `measure --json` prints it: lengths in mm, points and the closed feather polyline in the file's own coordinates
 * and unit. Described in docs/report.md.
 */
export interface MeasureReport extends Measures, Landmarks {
  readonly name: string;
  readonly source: Last["source"];
  readonly unit: Placement["unit"];
  readonly side: Side;
  /** Landmarks that the maker placed. */
  readonly placed: Last["placed"];
  readonly description: LastDescription;
  readonly feather: readonly Point3[];
  readonly findings: readonly FindingReport[];
}

export const findingReport = (f: Finding): FindingReport => ({ code: f.code, severity: severityOf(f), text: explain(f) });

/** A point of the last's frame in the file's own coordinates: file = unitPerMm · (rotation · p + translationMm). */
export function inFile([x, y, z]: Point3, { unitPerMm: s, rotation: r, translationMm: t }: Placement): Point3 {
  // To a tenth of a micrometre in the file's unit.
  const digits = 1e4 / s;
  const at = (i: number) => Math.round(s * (r[3 * i]! * x + r[3 * i + 1]! * y + r[3 * i + 2]! * z + t[i]!) * digits) / digits;
  return [at(0), at(1), at(2)];
}

export function measureReport(last: Last): MeasureReport {
  const { placement, landmarks, feather } = last;
  const mm = rounded(last.measures);
  const places = Object.fromEntries(Object.entries(landmarks).map(([name, p]: [string, Point3]) => [name, inFile(p, placement)])) as unknown as Landmarks;
  const points: Point3[] = [];
  for (let i = 0; i < feather.points.length; i += 3) points.push(inFile([feather.points[i]!, feather.points[i + 1]!, feather.points[i + 2]!], placement));
  return {
    name: last.name,
    source: last.source,
    unit: placement.unit,
    side: last.side,
    ...mm,
    ...places,
    placed: last.placed,
    description: rounded(describeLast(last)),
    feather: points,
    findings: last.findings.map(findingReport),
  };
}
