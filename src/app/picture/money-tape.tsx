import { useRef, type ReactElement } from "react";
import type { Cost, CostPart } from "#making/money/cost.ts";
import { isWhole, sumWords } from "#making/money/cost-words.ts";
import { listed } from "#base/listed.ts";
import { layTape, tapeMarks } from "../state/money-tape.ts";
import { money } from "../state/making-words.ts";
import { percent, say } from "../state/numbers.ts";
import { useSize } from "./use-size.ts";

/** Room at the sides, px. */
const side = 10;
/** Down the drawing, px: the price asked, the figures of the tape, the tape, rows of words. */
const [top, high, rowHigh] = [74, 62, 25];
/** Width of a letter, px, for words of 15 px; a little more than it is. */
const letter = 8.1;

/** Where the money of one pair goes: a tape as long as the pair costs, cut into what it goes into. */
export function MoneyTape({ cost }: { readonly cost: Cost }): ReactElement {
  const frame = useRef<HTMLDivElement>(null);
  const { width } = useSize(frame);
  const { total, asked, currency, shares, skinsDearer } = cost;
  const most = Math.max(total, asked ?? 0, skinsDearer.total);
  const wide = Math.max(60, width - 2 * side);
  const x = (value: number): number => side + (value / most) * wide;
  const told = gathered(shares);
  const words = told.map(({ parts: of, cost: c, share }) => [listed(of), `${money(c, currency)}, ${percent(share, 0)}`] as const);
  const parts = layTape(told.map(({ share }) => share), x(total) - side, words.map(([name, sum], i) => letter * (told[i]!.share > 0.2 ? Math.max(name.length, sum.length) : name.length + sum.length + 2)));
  const rows = Math.max(0, ...parts.map((p) => (p.inside ? 0 : p.row + 1)));
  const foot = top + high;
  const dearerAt = foot + 26 + rows * rowHigh;
  const dearer = skinsDearer.more > 0;
  return (
    <div className="money-tape" ref={frame}>
      <svg width={width} height={dearerAt + (dearer ? 52 : 4)} role="img" aria-label={inWords(cost)}>
        {tapeMarks(most, wide / 90).map((value) => (
          <g key={value}>
            <path className="tape-mark" d={`M${x(value).toFixed(1)} ${top}v-7`} />
            <text className="tape-figure" x={x(value)} y={top - 12} textAnchor={value === 0 ? "start" : x(value) > width - 30 ? "end" : "middle"}>{say(value, 2)}</text>
          </g>
        ))}
        {parts.map((p, i) => <path key={words[i]![0]} className={`tape-part ${kindOf(told[i]!.parts[0]!)}`} d={cutPiece(side + p.from, side + p.to, i === 0)} />)}
        {asked !== undefined && asked > total && isWhole(cost) && <path className="tape-left" d={`M${x(total).toFixed(1)} ${top}H${x(asked).toFixed(1)}V${foot}H${x(total).toFixed(1)}`} />}
        {parts.map((p, i) => {
          const [part, sum] = words[i]!;
          const [end, base] = p.inside ? [side + p.from + 10, top + 26] : [side + p.wordsTo, foot + 24 + p.row * rowHigh];
          return (
            <g key={part}>
              {!p.inside && <path className="leader" d={`M${(side + (p.from + p.to) / 2).toFixed(1)} ${foot}V${base - 12}`} />}
              <text x={p.inside ? end : end - 4} y={base} textAnchor={p.inside ? "start" : "end"}><tspan className="part-name">{part}</tspan>{p.inside ? <tspan x={end} dy={19}>{sum}</tspan> : <tspan dx={8}>{sum}</tspan>}</text>
            </g>
          );
        })}
        {asked !== undefined && <Asked cost={cost} at={x(asked)} width={width} />}
        {dearer && (
          <g>
            <path className="tape-part material" d={`M${side} ${dearerAt}H${x(total).toFixed(1)}v12H${side}Z`} />
            <path className="tape-more" d={`M${x(total).toFixed(1)} ${dearerAt - 3}H${Math.max(x(skinsDearer.total), x(total) + 3).toFixed(1)}v18H${x(total).toFixed(1)}Z`} />
            <text x={side} y={dearerAt + 34}>with skins a tenth dearer: {isWhole(cost) && `${money(skinsDearer.total, currency)}, `}{money(skinsDearer.more, currency)} more</text>
          </g>
        )}
      </svg>
    </div>
  );
}

/** The price asked, as a mark across the tape. */
function Asked({ cost, at, width }: { readonly cost: Cost; readonly at: number; readonly width: number }): ReactElement {
  const { currency, asked = 0, left = 0 } = cost, right = at > width / 2;
  const rest = left < 0 ? `${money(-left, currency)} too little` : isWhole(cost) ? `${money(left, currency)} left over` : "";
  return (
    <g>
      <path className="tape-asked" d={`M${at.toFixed(1)} 8V${top + high + 8}`} />
      <text x={at + (right ? -8 : 8)} y={20} textAnchor={right ? "end" : "start"}><tspan className="part-name">you ask {money(asked, currency)}</tspan>{" "}<tspan>{rest}</tspan></text>
    </g>
  );
}

/** A piece cut off a tape with a slanting knife; the first begins square. */
function cutPiece(from: number, to: number, first: boolean): string {
  const slant = Math.min(5, (to - from) / 3), gap = Math.min(1.5, (to - from) / 5), air = first ? 0 : gap;
  return `M${(from + air + (first ? 0 : slant)).toFixed(1)} ${top}H${(to + slant - gap).toFixed(1)}L${(to - slant - gap).toFixed(1)} ${top + high}H${(from + air - (first ? 0 : slant)).toFixed(1)}Z`;
}

/** Parts too small for a line of their own are told together. */
function gathered(shares: Cost["shares"]): readonly { readonly parts: readonly CostPart[]; readonly cost: number; readonly share: number }[] {
  const small = shares.filter(({ share }) => share < 0.02), large = shares.filter(({ share }) => share >= 0.02);
  const each = (small.length < 2 ? shares : large).map(({ part, ...rest }) => ({ parts: [part], ...rest }));
  if (small.length < 2) return each;
  return [...each, { parts: small.map(({ part }) => part), cost: small.reduce((sum, s) => sum + s.cost, 0), share: small.reduce((sum, s) => sum + s.share, 0) }];
}

const kindOf = (part: CostPart): string => (part === "work" ? "work" : part === "overhead" ? "overhead" : "material");

const inWords = (cost: Cost): string => `${sumWords(cost)}. ${listed(cost.shares.map(({ part, cost: sum, share }) => `${part} ${money(sum, cost.currency)}, ${percent(share, 0)}`))}.`;
