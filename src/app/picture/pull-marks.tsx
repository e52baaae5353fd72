import type { ReactElement } from "react";

/** An arrow of a pull on the screen, px: from the edge of the leather on. */
export interface ArrowOnScreen {
  readonly key: string;
  readonly x: number;
  readonly y: number;
  readonly dx: number;
  readonly dy: number;
}
/** A draft that holds already, px. */
export interface TackOnScreen {
  readonly number: number;
  /** Half of its width. */
  readonly half: number;
  readonly x: number;
  readonly y: number;
}

/** The drafts in the picture: those that hold as numbered rings, and arrows where it is pulled now. */
export function PullMarks({ arrows, tacks }: { readonly arrows: readonly ArrowOnScreen[]; readonly tacks: readonly TackOnScreen[] }): ReactElement {
  return (
    <g className="pulls">
      {tacks.map(({ number, half, x, y }) => (
        <g key={number} className="tack">
          <circle cx={x} cy={y} r={half} />
          <text x={x} y={y} textAnchor="middle" dominantBaseline="central">{number}</text>
        </g>
      ))}
      {arrows.map(({ key, x, y, dx, dy }) => {
        const d = arrowPath(x, y, dx, dy);
        return <g key={key} className="pull"><path className="halo" d={d} /><path d={d} /></g>;
      })}
    </g>
  );
}

/** A shaft with a head of two strokes. */
function arrowPath(x: number, y: number, dx: number, dy: number): string {
  const long = Math.hypot(dx, dy);
  // Toward the eye or away from it: a short stroke is all there is to see.
  const head = Math.min(12, 0.5 * long), [ux, uy] = long > 0 ? [dx / long, dy / long] : [0, 0];
  const [tx, ty] = [x + dx, y + dy];
  const barb = (side: number): string => `M${tx.toFixed(1)} ${ty.toFixed(1)}l${(-head * (ux + side * 0.6 * uy)).toFixed(1)} ${(-head * (uy - side * 0.6 * ux)).toFixed(1)}`;
  return `M${x.toFixed(1)} ${y.toFixed(1)}L${tx.toFixed(1)} ${ty.toFixed(1)}${barb(1)}${barb(-1)}`;
}
