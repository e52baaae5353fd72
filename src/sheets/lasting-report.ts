import type { Band } from "#lasting/foretold.ts";
import { markOf, marksOf, type GaugeMark } from "#lasting/gauges.ts";
import { halves, type Half } from "#lines/feather.ts";
import type { HeightMark } from "#lines/lines.ts";
import { correctedReport } from "./corrected.ts";
import type { LastInput } from "./input.ts";
import { gaugesFor } from "./marks/marks-pdf.ts";
import { round, rounded } from "./report-number.ts";

/** What is to come out on the last, what was foretold of it, the margin at each draft and the places to mark. Field by field: docs/report.md. */
export function lastingReport(input: LastInput) {
  const { lines, foretold, corrected, leatherName } = input;
  const gauges = gaugesFor(input);
  const length = (key: string) => {
    const mark = markOf(gauges, key)!;
    return { target: round(mark.lengthMm!), ...banded(mark.foretold) };
  };
  const height = (m: HeightMark, key: string) => ({ share: round(m.share), alongFeatherMm: round(m.alongFeatherMm), ...length(key) });
  const side = (half: Half) => ({
    lowest: height(half === "medial" ? lines.lowestMedial : lines.lowestLateral, `${half}-lowest`),
    quarters: lines.quarterHeights[half].map((m, i) => height(m, `${half}-quarter-${i + 1}`)),
  });
  const lasted = foretold?.lasted;
  return {
    throatDepthMm: length("throat"),
    backHeightMm: length("back"),
    sideHeightsMm: { medial: side("medial"), lateral: side("lateral") },
    margins: gauges.drafts.map(({ number, name, half, alongMm, upperMm, liningMm, foretold: told }) => ({
      draft: number, name, ...(half && { half }), alongFeatherMm: round(alongMm), upperMm: { target: round(upperMm), ...(told && { predicted: round(told.marginMm) }) }, liningMm: { target: round(liningMm) }, ...(told && { pull: told.word }),
    })),
    marks: [...gauges.marks.filter((m) => m.half === undefined), ...halves.flatMap((half) => marksOf(gauges, half))].map(markReport),
    ...(lasted && { settled: lasted.settled }),
    ...(corrected ? correctedReport(corrected) : leatherName !== undefined && { leather: { upper: { name: leatherName } } }),
  };
}

const banded = (band: Band | undefined) => (band ? rounded(band) : {});

const markReport = ({ letter, name, half, alongMm, lengthMm }: GaugeMark) => ({
  letter, name, ...(half && { half }), ...(alongMm !== undefined && { alongFeatherMm: round(alongMm) }), ...(lengthMm !== undefined && { lengthMm: round(lengthMm) }),
});
