import { useEffect, useRef, useSyncExternalStore, type ReactElement } from "react";
import type { Making } from "#making/making.ts";
import { writePriceTable, writeShelfTable } from "#making/money/write-goods-tables.ts";
import type { Desk } from "../desk.ts";
import { downloadBytes } from "../download.ts";
import { makingTables } from "../making-tables.ts";
import { departs, takingOwn, withWorkshop, workshopOf } from "../state/workshop.ts";
import { offTheShelf } from "../state/off-the-shelf.ts";
import type { Workshop } from "../workshop.ts";
import { Chooser } from "./chooser.tsx";
import { FindingsList } from "./findings-list.tsx";
import { Fold } from "./fold.tsx";

/** That this pair holds other prices than the maker's own, with a way to hers and a way to keep these. */
export function MakingOthers({ desk, workshop }: { readonly desk: Desk; readonly workshop: Workshop }): ReactElement {
  const { own, said } = useSyncExternalStore(workshop.listen, workshop.look);
  const apart = own && departs(workshopOf(desk.job), own);
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
    </div>
  );
}

/** What is kept for other pairs, as tables of the maker's own, and the shelf after this pair. */
export function MakingWorkshop({ desk, making }: { readonly desk: Desk; readonly making: Making }): ReactElement {
  const { job } = desk;
  const { prices, shelf, skins } = job.making;
  const { said, findings } = useSyncExternalStore(makingTables.listen, makingTables.look);
  const chooser = useRef<HTMLInputElement>(null);
  const table = (name: string, text: string): void => downloadBytes(name, new TextEncoder().encode(text), "text/csv");
  const less = offTheShelf(job, making);
  return (
    <Fold name="Your workshop" holds="kept for other pairs, and as tables">
      <p className="follows">Prices, shelf, sizes of skins, your minutes, pay, overhead, cement and when you work are kept in this browser, and every new pair begins with them. How many pairs and lasts, the first day, the price asked and what is ticked off belong to this pair.</p>
      <p className="acts-here">
        {(prices || skins) && <button type="button" className="word" onClick={() => table("my-prices.csv", writePriceTable(prices, skins))}>Save the prices as a table</button>}
        {shelf && <button type="button" className="word" onClick={() => table("my-shelf.csv", writeShelfTable(shelf))}>Save the shelf as a table</button>}
        <button type="button" className="word" onClick={() => chooser.current?.click()}>Read a table of prices or of the shelf</button>
        {less && <button type="button" className="word" onClick={() => desk.change(less, "taking this off the shelf")}>Take what {making.pairs === 1 ? "this pair uses" : `these ${making.pairs} pairs use`} off the shelf</button>}
      </p>
      <div role="status">
        {said && <p className="follows">{said}</p>}
        <FindingsList findings={findings} all={[]} />
      </div>
      <Chooser at={chooser} label="table of prices or of the shelf" accept=".csv,.tsv,.txt,text/csv" onFiles={([file]) => file && void makingTables.open(desk, file)} />
    </Fold>
  );
}
