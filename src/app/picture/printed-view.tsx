import { useEffect, useRef, useState, type KeyboardEvent, type ReactElement } from "react";
import type { PrintedPage } from "../state/page-drawing.ts";
import { mm } from "../state/numbers.ts";
import { turned } from "../state/page-turns.ts";
import { PageSheet } from "./printed-page.tsx";

interface PrintedViewProps {
  readonly pages: readonly PrintedPage[];
  /** From 0. */
  readonly at: number;
  readonly onTurn: (to: number) => void;
}

/** A print looked through page by page: buttons and arrow keys turn, a small page jumps there. */
export function PrintedView({ pages, at, onTurn }: PrintedViewProps): ReactElement {
  const page = pages[at]!;
  const [near, setNear] = useState(false);
  const strip = useRef<HTMLDivElement>(null);
  useEffect(() => {
    strip.current?.querySelector('[aria-current="page"]')?.scrollIntoView({ block: "nearest", inline: "center" });
  }, [at]);
  const key = (e: KeyboardEvent): void => {
    const to = turned(e.key, at, pages.length);
    // Where the page is larger than the picture, up and down move it.
    if (to === undefined || (near && /^(Arrow(Up|Down)|Page(Up|Down)|Home|End)$/.test(e.key))) return;
    e.preventDefault();
    onTurn(to);
  };
  return (
    <section className="view printed" aria-label="The pages as they are printed" onKeyDown={key}>
      <div className={near ? "frame near" : "frame"} tabIndex={0} role="group" aria-label={`Page ${at + 1} of ${pages.length}. Arrow keys ${near ? "left and right turn the pages, the others move the page" : "turn the pages"}.`}>
        <div className="near-or-whole" style={near ? { width: `${page.widthMm}mm`, height: `${page.heightMm}mm` } : {}}><PageSheet page={page} label={`Page ${at + 1} of ${pages.length} as it is printed, ${mm(page.widthMm, 0)} by ${mm(page.heightMm, 0)}.`} /></div>
      </div>
      <div className="under">
        <p>
          <button type="button" className="word" disabled={at === 0} onClick={() => onTurn(at - 1)}>Page back</button>
          <span role="status">Page {at + 1} of {pages.length}</span>
          <button type="button" className="word" disabled={at === pages.length - 1} onClick={() => onTurn(at + 1)}>Next page</button>
          <button type="button" className="word" onClick={() => setNear(!near)}>{near ? "the whole page" : "nearer"}</button>
        </p>
      </div>
      <div className="page-strip" ref={strip} role="group" aria-label="Jump to a page">
        {pages.map((p, i) => (
          <button key={i} type="button" aria-label={`page ${i + 1}`} aria-current={i === at ? "page" : undefined} onClick={() => onTurn(i)}>
            <PageSheet page={p} />
            <span>{i + 1}</span>
          </button>
        ))}
      </div>
    </section>
  );
}
