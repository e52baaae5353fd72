import { useState, type ReactElement } from "react";
import type { SheetFile } from "#sheets/sheet-file.ts";
import type { Desk } from "../desk.ts";
import type { PagePlan } from "../state/page-plan.ts";
import type { MadeSheets } from "../worker-talk.ts";
import { PrintedView } from "./printed-view.tsx";
import { SheetsView } from "./sheets-view.tsx";

const titles: Partial<Record<SheetFile["name"], string>> = { "pattern.pdf": "pages of the pattern", "marks.pdf": "pages of tape lengths", "making.pdf": "the bench book" };

interface SheetsPictureProps {
  readonly desk: Desk;
  readonly plan: PagePlan;
  /** Files that hold for the pair at hand. */
  readonly made: MadeSheets | undefined;
}

/** How the pages are joined, or the pages one by one, just as they are printed: out of the finished files. */
export function SheetsPicture({ desk, plan, made }: SheetsPictureProps): ReactElement {
  const [shown, show] = useState<SheetFile["name"]>();
  const [at, turn] = useState(0);
  const making = desk.now.busy?.on === "sheets";
  const pages = shown && made?.printed.get(shown);
  const look = (name: SheetFile["name"] | undefined): void => {
    show(name);
    turn(0);
    if (name && !made && !making) desk.makeSheets();
  };
  return (
    <>
      {pages ? <PrintedView pages={pages} at={Math.min(at, pages.length - 1)} onTurn={turn} /> : <SheetsView plan={plan} />}
      <div className="under">
        <p>
          <span>Look at</span>
          <button type="button" className="word" aria-pressed={!pages} onClick={() => look(undefined)}>how they are joined</button>
          {(Object.keys(titles) as SheetFile["name"][]).map((name) => (
            <button key={name} type="button" className="word" aria-pressed={pages !== undefined && shown === name} disabled={making || desk.now.draft} onClick={() => look(name)}>{titles[name]}</button>
          ))}
        </p>
        {!made && <p>{making ? "Making the sheets …" : "The pages are looked at as they are printed; for that the sheets are made first."}</p>}
      </div>
    </>
  );
}
