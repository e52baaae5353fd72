import { useId, useState, type ReactElement } from "react";
import { capital } from "#base/listed.ts";
import { byGoodGroup } from "../state/good-words.ts";
import { amountOf, buyWords, leftOver, listAsText, listLines, paidWords, toolsApart, type ListLine } from "../state/list-words.ts";
import { money } from "../state/making-words.ts";
import type { MakingViewProps } from "../state/making-views.ts";
import { mm, percent } from "../state/numbers.ts";

/** What to buy for all pairs, as it is taken to the shop; each thing opens to why and what it is for. */
export function MakingList({ desk, making }: Pick<MakingViewProps, "desk" | "making">): ReactElement {
  const lines = listLines(making);
  const { pairs, cost } = making;
  const { title } = desk.job;
  return (
    <section className="making-page shopping">
      <header>
        <h2>To buy for {pairs === 1 ? "one pair" : `${pairs} pairs`}</h2>
        <p className="follows">
          {paidWords(making) !== undefined && <b>{paidWords(making)} </b>}
          {toolsApart} What falls away between the pieces is counted in{lines.some(leftOver) && ", and what will be left over is told at each thing"}. The list is printed with the bench book, making.pdf, at the station Sheets. <CopyList text={() => listAsText(title, making)} />
        </p>
        {Object.keys(desk.job.making).length === 0 && <p>Begin with <b>the steps</b> and with <b>tools and care</b>, under this page: they tell what is done, with what, and what can hurt. Then buy what stands here. Prices and when you work are written in the column as soon as you want to know what it costs and when it is ready.</p>}
      </header>
      {byGoodGroup(lines).map(({ group, here }) => (
        <section key={group} aria-label={capital(group)}>
          <h3>{capital(group)}</h3>
          <ul>{here.map((line) => <Thing key={line.good} line={line} pairs={pairs} currency={cost.currency} />)}</ul>
        </section>
      ))}
    </section>
  );
}

function Thing({ line, pairs, currency }: { readonly line: ListLine; readonly pairs: number; readonly currency: string }): ReactElement {
  const [open, setOpen] = useState(false);
  const id = useId();
  const { good, need, buy } = line;
  const enough = buy.short <= 0;
  return (
    <li className={enough ? "enough" : undefined}>
      <p className="thing">
        <span><b>{capital(good)}</b>, {need.kind}</span>
        <span className="to-buy">{buy.outOf ? buyWords(line) : enough ? "enough on the shelf" : <b>{buyWords(line)}</b>}{!enough && buy.paid !== undefined && <span className="follows"> {money(buy.paid, currency)}</span>}</span>
      </p>
      <p className="follows">
        {takesWords(line, pairs)}{" "}
        {buy.caution !== undefined && <><b>{buy.caution}</b>{" "}</>}
        <button type="button" className="word why" aria-expanded={open} aria-controls={id} aria-label={`why: ${good}`} onClick={() => setOpen(!open)}>why</button>
      </p>
      <div className="reason" id={id} hidden={!open}>
        <p>{need.reason}</p>
        {need.parts.length > 0 && <p>It goes into {need.parts.map((p) => `${p.perPair > 1 ? `${p.perPair} × ` : ""}${p.name}, ${amountOf(need, p.net)}`).join("; ")}.</p>}
        {need.waste && <p>{percent(need.waste.ofBought, 0)} of what you buy falls away, {percent(need.waste.onPieces, 0)} on top of the pieces. {need.waste.why}</p>}
        {need.holds && <p>The largest part needs a piece of {mm(need.holds.longMm, 0)} by {mm(need.holds.wideMm, 0)}{need.holds.count > 1 && `, and a pair has ${need.holds.count} of it: look for room for all of them`}.</p>}
        <p className="source">{need.source}</p>
      </div>
    </li>
  );
}

/** How what has to be bought comes about: for one pair, for all, less the shelf. What the line above says already is left out. */
function takesWords({ need, buy }: Pick<ListLine, "need" | "buy">, pairs: number): string {
  const of = (amount: number): string => amountOf(need, amount);
  const shelf = buy.onShelf > 0 ? `; on the shelf ${of(buy.onShelf)}` : "";
  const left = leftOver({ buy }) ? `; ${of(buy.left)} will be left over` : "";
  if (pairs > 1) return `One pair takes ${of(need.gross)}, ${pairs} pairs ${of(buy.needed)}${shelf}${left}.`;
  if (shelf || left) return `One pair takes ${of(need.gross)}${shelf}${left}.`;
  return need.gross > need.net * 1.0001 ? `${of(need.net)} of it in the pieces, the rest falls away or is spare.` : "";
}

function CopyList({ text }: { readonly text: () => string }): ReactElement {
  const [said, say] = useState<string>();
  const copy = (): void => {
    const whole = text();
    void Promise.resolve()
      .then(() => navigator.clipboard.writeText(whole))
      .then(() => say("Copied; paste it into a message or a note."), () => say("This browser does not let the page copy."));
  };
  return (
    <>
      <button type="button" className="word" onClick={copy}>Copy the list</button>
      <span role="status"> {said}</span>
    </>
  );
}
