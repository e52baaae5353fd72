import type { ReactElement } from "react";

interface ScaleBarProps {
  readonly pxPerMm: number;
  /** Of the frame, px. */
  readonly width: number;
  readonly height: number;
}

/** 50 mm as long as the picture shows them, at the foot of the frame. */
export function ScaleBar({ pxPerMm, width, height }: ScaleBarProps): ReactElement {
  const bar = 50 * pxPerMm;
  return (
    <g className="scale" transform={`translate(${((width - bar) / 2).toFixed(1)} ${height - 20})`}>
      <path d={`M0 -5V5M0 0H${bar.toFixed(1)}M${bar.toFixed(1)} -5V5`} />
      <text x={bar / 2} y={-6} textAnchor="middle">50 mm</text>
    </g>
  );
}
