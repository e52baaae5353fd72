import { useMemo, useRef, type ReactElement } from "react";
import type { Piece, Xy } from "#pieces/piece.ts";
import type { UpperLayer } from "#leather/leather.ts";
import { bounds } from "#plane/measure.ts";
import { insidePoint } from "../state/inside-point.ts";
import { say } from "../state/numbers.ts";
import { kindsOf } from "../state/piece-kinds.ts";
import { layOut } from "./lay-kinds.ts";
import { pathOf } from "./mark-shape.tsx";
import { useSize } from "./use-size.ts";

interface LaidWaysProps {
  readonly pieces: readonly Piece[];
  /** Turn of each layer's direction of least stretch from lengthwise, degrees counter-clockwise. */
  readonly turns: Readonly<Record<UpperLayer, number>>;
}

const mostHalfMm = 30;
const headMm = 5;
const layerOf: Partial<Record<Piece["material"], UpperLayer>> = { "upper leather": "upper", "lining leather": "lining" };

/** The pieces of the right shoe as they are laid on the skin: the arrow is its direction of least stretch. */
export function LaidWays({ pieces, turns }: LaidWaysProps): ReactElement {
  const frame = useRef<HTMLDivElement>(null);
  const { width, height } = useSize(frame);
  const kinds = useMemo(() => kindsOf(pieces).filter((k) => k.shown.ground !== undefined && layerOf[k.material] !== undefined), [pieces]);
  const placed = useMemo(() => layOut(kinds, width, height, 0), [kinds, width, height]);
  const said = kinds.map((k) => `${k.name}, ${angleWords(angleOf(k.shown, turns))}`).join("; ");
  return (
    <section className="view pieces laid-ways" aria-label="How the pieces are laid on the skin">
      <div className="frame" ref={frame}>
        <svg className="overlay" width={width} height={height} role="img" aria-label={`The pieces of the right shoe with the direction of least stretch: ${said}.`}>
          {placed.map(({ kind, x, y, pxPerMm, left, top, wide, high }) => {
            const angle = angleOf(kind.shown, turns);
            return (
              <g key={kind.name}>
                <g transform={`translate(${x.toFixed(1)} ${y.toFixed(1)}) scale(${pxPerMm.toFixed(4)} ${(-pxPerMm).toFixed(4)})`}>
                  <path d={`${pathOf(kind.shown.outline.xy)}Z`} className="cut" />
                  <path d={arrowPath(arrowAt(kind.shown), angle, arrowHalf(kind.shown))} className="mark skin-arrow" />
                </g>
                <text x={left + wide / 2} y={top + high - 22} textAnchor="middle" className="name">{kind.name}</text>
                <text x={left + wide / 2} y={top + high - 5} textAnchor="middle" className="what">{angleWords(angle)}</text>
              </g>
            );
          })}
        </svg>
      </div>
    </section>
  );
}

const angleOf = (piece: Piece, turns: LaidWaysProps["turns"]): number => piece.directionDeg + turns[layerOf[piece.material]!];

function angleWords(deg: number): string {
  const turned = ((((deg + 90) % 180) + 180) % 180) - 90;
  if (Math.abs(turned) > 89.5) return "across";
  return Math.abs(turned) < 0.5 ? "lengthwise" : `turned ${say(Math.abs(turned), 0)}° to the ${turned > 0 ? "left" : "right"}`;
}

/** Where the piece has its own arrow, else amid it. */
function arrowAt({ marks, outline }: Piece): Xy {
  const own = marks.find((m) => m.kind === "arrow");
  if (own?.kind === "arrow") return [(own.from[0] + own.to[0]) / 2, (own.from[1] + own.to[1]) / 2];
  const { x, y } = insidePoint(outline.xy);
  return [x, y];
}

/** Not longer than the piece has room for. */
function arrowHalf({ outline }: Piece): number {
  const { minX, maxX, minY, maxY } = bounds(outline);
  return Math.min(mostHalfMm, 0.36 * Math.min(maxX - minX, maxY - minY));
}

/** An arrow with a head at both ends, for least stretch has no sense. */
function arrowPath([cx, cy]: Xy, deg: number, halfMm: number): string {
  const [ux, uy] = [Math.cos((deg * Math.PI) / 180), Math.sin((deg * Math.PI) / 180)];
  const end = (sign: number): string => {
    const [x, y] = [cx + sign * halfMm * ux, cy + sign * halfMm * uy];
    const barb = (side: number): string => `${(x - sign * headMm * ux - side * 0.5 * headMm * uy).toFixed(2)} ${(y - sign * headMm * uy + side * 0.5 * headMm * ux).toFixed(2)}`;
    return `M${barb(1)}L${x.toFixed(2)} ${y.toFixed(2)}L${barb(-1)}`;
  };
  return `M${(cx - halfMm * ux).toFixed(2)} ${(cy - halfMm * uy).toFixed(2)}L${(cx + halfMm * ux).toFixed(2)} ${(cy + halfMm * uy).toFixed(2)}${end(1)}${end(-1)}`;
}
