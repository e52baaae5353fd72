import { useMemo, useRef, type ReactElement } from "react";
import type { StripWay } from "#leather/leather.ts";
import type { StripFit } from "#leather/strip-fit.ts";
import { plotStrips, type PlottedWay } from "#leather/strip-plot.ts";
import { wayWords } from "#leather/strip-words.ts";
import { percent } from "../state/numbers.ts";
import { toldN, toldWidthMm } from "../state/told-load.ts";
import { spread } from "./margin-labels.ts";
import { pathOf } from "./mark-shape.tsx";
import { useSize } from "./use-size.ts";

interface StripPlotViewProps {
  readonly fit: StripFit;
  /** Whose leather it is: "The upper’s leather: calf". */
  readonly title: string;
}

/** Room for the words at the axes, px. */
const margin = { left: 62, right: 124, top: 60, bottom: 64 };

/** Stretch against load: what was read as points, what is reckoned with as lines, and where 9 of 10 skins lie as a shade. */
export function StripPlotView({ fit, title }: StripPlotViewProps): ReactElement {
  const frame = useRef<HTMLDivElement>(null);
  const { width, height } = useSize(frame);
  const [wide, high] = [Math.max(40, width - margin.left - margin.right), Math.max(40, height - margin.top - margin.bottom)];
  const plot = useMemo(() => plotStrips(fit, { left: margin.left, top: margin.top, width: wide, height: high }), [fit, wide, high]);
  const foot = margin.top + high;
  return (
    <section className="view strips" aria-label={title}>
      <div className="frame" ref={frame}>
        <svg className="overlay" width={width} height={height} role="img" aria-label={inWords(fit, title)}>
          <text x={margin.left} y={24} className="name">{title}</text>
          <text x={margin.left} y={margin.top - 14} className="axis">stretch between the marks, percent</text>
          <text x={margin.left + wide} y={foot + 48} textAnchor="end" className="axis">load on a strip {toldWidthMm} mm wide, N</text>
          {plot.stretches.map(({ text, at }) => (
            <g key={text}>
              <path className="grid-line" d={`M${margin.left} ${at.toFixed(1)}h${wide}`} />
              <text x={margin.left - 8} y={at} textAnchor="end" dominantBaseline="middle">{text}</text>
            </g>
          ))}
          {plot.loads.map(({ text, at }) => (
            <g key={text}>
              {Number(text) === toldN && <path className="told-line" d={`M${at.toFixed(1)} ${margin.top}V${foot}`} />}
              <text x={at} y={foot + 22} textAnchor="middle">{text}</text>
            </g>
          ))}
          {plot.ways.map(({ way, band }) => <path key={way} className={`band of-${way}`} d={`${pathOf(band)}Z`} />)}
          {plot.ways.map(({ way, band }) => <path key={way} className={`band-rim of-${way}`} d={rims(band)} />)}
          {plot.ways.map(({ way, line }) => <path key={way} className={`curve of-${way}`} d={pathOf(line)} />)}
          {plot.readings.map(({ way, strip, reading, x, y }) => <ReadMark key={`${strip} ${reading}`} way={way} x={x} y={y} />)}
          {namedAt(plot.ways, margin.top, foot).map(({ way, end, at }) => (
            <g key={way}>
              <path className="leader" d={`M${end.x.toFixed(1)} ${end.y.toFixed(1)}L${(end.x + 12).toFixed(1)} ${at.toFixed(1)}`} />
              <text x={end.x + 16} y={at} dominantBaseline="middle">{wayWords[way]}</text>
            </g>
          ))}
        </svg>
      </div>
    </section>
  );
}

/** Upper and lower rim of a band, without the end where it is cut off. */
const rims = (band: Float64Array): string => `${pathOf(band.subarray(0, band.length / 2))}${pathOf(band.subarray(band.length / 2))}`;

/** Each way has a mark of its own shape: a ring along, a square across, a diamond at 45 degrees. */
function ReadMark({ way, x, y }: { readonly way: StripWay; readonly x: number; readonly y: number }): ReactElement {
  const r = 5;
  if (way === "along") return <circle className="read of-along" cx={x} cy={y} r={r} />;
  if (way === "across") return <rect className="read of-across" x={x - r} y={y - r} width={2 * r} height={2 * r} />;
  return <path className="read of-bias" d={`M${x} ${y - r - 2}l${r + 2} ${r + 2}l${-r - 2} ${r + 2}l${-r - 2} ${-r - 2}Z`} />;
}

/** The names stand right of their lines, clear of one another. */
function namedAt(ways: readonly PlottedWay[], top: number, foot: number): readonly (PlottedWay & { readonly at: number })[] {
  const order = [...ways].sort((a, b) => a.end.y - b.end.y);
  const places = spread(order.map((w) => w.end.y), 24, top, foot);
  return order.map((w, i) => ({ ...w, at: places[i]! }));
}

/** The picture for those who hear the page. */
function inWords({ told, readings }: StripFit, title: string): string {
  const one = (way: StripWay): string => {
    const read = readings.filter((r) => r.way === way).length;
    return `${wayWords[way]} ${percent(told[way].stretch)} at ${toldN} N, ${read === 0 ? "nothing read" : read === 1 ? "one reading" : `${read} readings`}`;
  };
  return `${title}: stretch against load. ${one("along")}; ${one("across")}; ${one("bias")}.`;
}
