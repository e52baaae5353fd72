import { useState, type ReactElement } from "react";
import { explain, severityOf, type Finding } from "#base/findings.ts";
import type { LastPair } from "#job/pair.ts";
import type { Side } from "#last/last.ts";
import { adviseDrafts } from "#lasting/log-advice.ts";
import { checkMeasured } from "#lasting/log-check.ts";
import { judgePair, judgeShoe } from "#lasting/log-judge.ts";
import type { Asked, Measured } from "#lasting/log.ts";
import { askedOver, onBareLast } from "#lasting/over-upper.ts";
import { lastingFrom } from "#lasting/settings.ts";
import type { Desk } from "../desk.ts";
import type { LastingWork } from "../lasting-work.ts";
import { pairsIn, removePair, shoeIn, type ShoeMade } from "../state/log-edits.ts";
import { Fold } from "./fold.tsx";
import { ShoeHistory } from "./shoe-history.tsx";
import { ShoeTable } from "./shoe-table.tsx";
import { ShoeTeaches } from "./shoe-teaches.tsx";
import { WordChoice } from "./word-choice.tsx";

interface ShoeLogProps {
  readonly desk: Desk;
  readonly pair: LastPair;
  /** What is asked and foretold of the shoes made now. */
  readonly made: ShoeMade & { readonly asked: Asked };
  readonly work: LastingWork;
}

const sides: readonly Side[] = ["left", "right"];

/** What the maker measured on her shoes, what comes of it for this pair, and what all of them taught. */
export function ShoeLog({ desk, pair, made, work }: ShoeLogProps): ReactElement {
  const { lastings, now, holds } = work;
  const written = pairsIn(desk.job);
  const next = (written.at(-1) ?? 0) + 1;
  const [picked, pick] = useState<number>();
  const shown = picked ?? written.at(-1) ?? next;
  const [cemented, cement] = useState(false);
  const shoes = Object.fromEntries(sides.flatMap((side) => {
    const entry = shoeIn(desk.job, shown, side);
    return entry ? [[side, entry]] : [];
  })) as Partial<Record<Side, ReturnType<typeof shoeIn> & object>>;
  // Of a shoe written down earlier that was asked which was asked then.
  const asked = shoes.left?.asked ?? shoes.right?.asked ?? made.asked;
  const first = shoes.left ?? shoes.right;
  const overMm = first ? first.overMm : made.overMm;
  const checks = sides.map((side) => checkMeasured(side, shoes[side]?.measured ?? {}, pair.last.measures.lastLength, askedOver(asked, shoes[side]?.overMm)));
  const usable: Partial<Record<Side, Measured>> = Object.fromEntries(sides.flatMap((side, i) => (shoes[side] ? [[side, onBareLast(checks[i]!.measured, shoes[side].overMm)]] : [])));
  const alike = usable.left && usable.right ? judgePair(usable.left, usable.right) : undefined;
  const single = sides.flatMap((side) => (usable[side] ? judgeShoe(side, usable[side], asked).findings : []));
  const effects = holds ? now.effects : undefined;
  const advice = adviseDrafts(usable, asked, { pulls: lastingFrom(desk.job.lasting), ...(effects && { effects }), cemented: { left: cemented, right: cemented } });
  return (
    <section aria-label="The shoes as they came out">
      <h3>The shoes as they came out</h3>
      <p className="sentence">
        Measure each shoe on its last after lasting, with the tape over the upper as it lies, and type what you read for pair{" "}
        <WordChoice label="which pair" value={String(shown)} options={[...new Set([...written, next])].map(String)} say={(n) => (Number(n) === next ? `${n}, new` : n)} onChange={(n) => pick(Number(n))} />; leave empty what you did not read.
      </p>
      <ShoeTable desk={desk} pair={shown} made={made} asked={askedOver(asked, overMm)} overUpper={overMm !== undefined} />
      <ShoeTeaches desk={desk} pair={pair} shown={shown} made={made} work={work} />
      {written.includes(shown) && (
        <p className="acts-here">
          <label><input type="checkbox" checked={cemented} onChange={(e) => cement(e.target.checked)} /> the margin of this pair is cemented already</label>
          <button type="button" className="word" onClick={() => {
            pick(undefined);
            desk.change(removePair(desk.job, shown), `taking out pair ${shown}`);
          }}>Take pair {shown} out</button>
        </p>
      )}
      <Told title="Not usable, or to be read again" of={checks.flatMap((c) => c.findings)} />
      <Told title="Left against right" of={alike?.findings ?? []} />
      <Told title="Each against what was asked" of={single} />
      <Told title="What to do" of={[...advice.moves.map((m) => m.finding), ...advice.findings]} />
      {advice.moves.length > 0 && !effects && !now.busy && (
        <p className="follows">
          How much a draft does is told by a rule of thumb. <button type="button" className="word" onClick={() => lastings.ask({ for: "lasting", what: "drafts", job: pair.job })}>Reckon it for this pair</button>: each draft is tried a little harder and a little softer.
        </p>
      )}
      {desk.job.log.length > 0 && <Fold name="All pairs so far" holds={`${written.length === 1 ? "one pair" : `${written.length} pairs`}`}><ShoeHistory log={desk.job.log} learned={pair.leathers.learned} /></Fold>}
    </section>
  );
}

function Told({ title, of }: { readonly title: string; readonly of: readonly Finding[] }): ReactElement | null {
  if (of.length === 0) return null;
  return (
    <>
      <p className="follows">{title}:</p>
      <ul className="findings" aria-label={title}>{of.map((f, i) => <li key={i} className={severityOf(f)}>{explain(f)}</li>)}</ul>
    </>
  );
}
