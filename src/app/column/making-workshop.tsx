import { useEffect, useRef, useSyncExternalStore, type ReactElement } from "react";
import { capital, listed } from "#base/listed.ts";
import type { Making } from "#making/making.ts";
import { writePriceTable, writeShelfTable } from "#making/money/write-goods-tables.ts";
import type { Desk } from "../desk.ts";
import { downloadBytes } from "../download.ts";
import { makingTables } from "../making-tables.ts";
import { ofThisPair } from "../state/of-this-pair.ts";
import { departs, takingOwn, withWorkshop, workshopOf } from "../state/workshop.ts";
import { offTheShelf, takenOff, takingOff } from "../state/off-the-shelf.ts";
import type { Workshop } from "../workshop.ts";
import { Chooser } from "./chooser.tsx";
import { FindingsList } from "./findings-list.tsx";
import { Fold } from "./fold.tsx";

/** That this pair holds other prices than the maker's own, with a way to hers and a way to keep these. */
export function MakingOthers({ desk, workshop }: { readonly desk: Desk; readonly workshop: Workshop }): ReactElement {
  const { own, former: [former], said, unreadable } = useSyncExternalStore(workshop.listen, workshop.look);
  const apart = own && unreadable === undefined ? departs(workshopOf(desk.job), own) : undefined;
  const isApart = Boolean(apart);
  const place = useRef<HTMLDivElement>(null);
  // An opened file may come while the hand is far down the column.
  useEffect(() => {
    if (isApart) place.current?.scrollIntoView({ block: "nearest" });
  }, [isApart]);
  return (
    <div role="status" ref={place}>
      {apart && (
        <p className="sentence picked">
          This pair keeps prices and shelf of its own. Other than yours: {apart}.{" "}
          <button type="button" className="word" onClick={() => desk.bring(withWorkshop(desk.job, own), takingOwn)}>Use my own prices and shelf</button>, or{" "}
          <button type="button" className="word" onClick={() => void workshop.keep(desk.job)}>keep these as mine</button>.
        </p>
      )}
      {said && <p className="follows">{said}</p>}
      {unreadable !== undefined && (
        <p className="acts-here">
          <button type="button" className="word" onClick={() => downloadBytes("my-former-prices.json", new TextEncoder().encode(unreadable), "application/json")}>Save what cannot be read to a file</button>
          <button type="button" className="word" onClick={() => void workshop.keep(desk.job)}>keep this pair’s as mine</button>
        </p>
      )}
      {former && (
        <p className="follows">
          Other prices and shelf were yours before: {departs(former, own ?? {}) ?? "the same as now"}.{" "}
          <button type="button" className="word" onClick={() => void workshop.haveBack()}>Have those back</button>, or{" "}
          <button type="button" className="word" onClick={() => void workshop.letGo()}>let them go</button>.
        </p>
      )}
    </div>
  );
}

/** What is kept for other pairs, as tables of the maker's own, and the shelf after this pair. */
export function MakingWorkshop({ desk, making }: { readonly desk: Desk; readonly making: Making }): ReactElement {
  const { job } = desk;
  const { prices, shelf, skins } = job.making;
  const chooser = useRef<HTMLInputElement>(null);
  const table = (name: string, text: string): void => downloadBytes(name, new TextEncoder().encode(text), "text/csv");
  const less = offTheShelf(job, making);
  const taken = takenOff(desk.now.history);
  const used = making.pairs === 1 ? "this pair uses" : `these ${making.pairs} pairs use`;
  return (
    <Fold name="Your workshop" holds="kept for other pairs, and as tables">
      <p className="follows">Prices, shelf, sizes of skins, your minutes, pay, overhead, cement and when you work are kept in this browser, and every new pair begins with them. How many pairs and lasts, the first day, the price asked and what is ticked off belong to this pair.</p>
      <p className="acts-here">
        {(prices || skins) && <button type="button" className="word" onClick={() => table("my-prices.csv", writePriceTable(prices, skins))}>Save the prices as a table</button>}
        {shelf && <button type="button" className="word" onClick={() => table("my-shelf.csv", writeShelfTable(shelf))}>Save the shelf as a table</button>}
        <button type="button" className="word" onClick={() => chooser.current?.click()}>Read a table of prices or of the shelf</button>
        {less && <button type="button" className="word" onClick={() => desk.change(less, takingOff)}>Take what {used} off the shelf{taken ? " once more" : ""}</button>}
      </p>
      <div role="status">
        {taken && <p className="follows">Taken off the shelf{taken.times > 1 ? `, ${taken.times} times by now` : ""}. {capital(listed(taken.changed))}. What is drawn out and used again stays there.</p>}
      </div>
      <Chooser at={chooser} label="table of prices or of the shelf" accept=".csv,.tsv,.txt,text/csv" onFiles={([file]) => file && void makingTables.open(desk, file)} />
    </Fold>
  );
}

/** What became of the table that was read last. It may have been let go over the page, so it stands under no heading; it goes when the table is taken back or another pair comes. */
export function MakingTable({ desk }: { readonly desk: Desk }): ReactElement {
  const told = useSyncExternalStore(makingTables.listen, makingTables.look);
  const stands = told.of !== undefined && ofThisPair(desk.now.history).some(({ job }) => job === told.of);
  const place = useRef<HTMLDivElement>(null);
  const seen = useRef(told);
  useEffect(() => {
    if (seen.current !== told) place.current?.scrollIntoView({ block: "nearest" });
    seen.current = told;
  }, [told]);
  return (
    <div role="status" ref={place}>
      {stands && told.said && <p className="follows">{told.said}</p>}
      {stands && <FindingsList findings={told.findings} all={[]} />}
    </div>
  );
}
