import { memo, useId, useMemo, type ReactElement } from "react";
import { pageDrawing, type PageMark, type PrintedPage } from "../state/page-drawing.ts";

/** One page in black on white, just as the printer draws it; the paper fills the box it is given. Without a label it is small, and its words are left out. */
export const PageSheet = memo(function PageSheet({ page, label }: { readonly page: PrintedPage; readonly label?: string }): ReactElement {
  const { marks, clips } = useMemo(() => pageDrawing(page), [page]);
  const id = useId();
  const { widthMm, heightMm } = page;
  return (
    <svg className="paper-page" viewBox={`0 0 ${widthMm} ${heightMm}`} preserveAspectRatio="xMidYMid meet" {...(label === undefined ? { "aria-hidden": true } : { role: "img", "aria-label": label })}>
      <rect width={widthMm} height={heightMm} className="paper-ground" />
      <defs>{clips.map((d, i) => <clipPath key={i} id={`${id}-${i}`}><path d={d} transform={`matrix(1 0 0 -1 0 ${heightMm})`} /></clipPath>)}</defs>
      {inRuns(marks).map(({ clip, marks: run }, i) => (
        <g key={i} {...(clip === undefined ? {} : { clipPath: `url(#${id}-${clip})` })}>
          <g transform={`matrix(1 0 0 -1 0 ${heightMm})`}>{run.map((mark, k) => (label === undefined && mark.kind === "words" ? null : <Drawn key={k} mark={mark} />))}</g>
        </g>
      ))}
    </svg>
  );
});

/** Marks one after the other that share a clip. */
function inRuns(marks: readonly PageMark[]): readonly { readonly clip: number | undefined; readonly marks: readonly PageMark[] }[] {
  const runs: { clip: number | undefined; marks: PageMark[] }[] = [];
  for (const mark of marks) {
    const run = runs.at(-1);
    if (run && run.clip === mark.clip) run.marks.push(mark);
    else runs.push({ clip: mark.clip, marks: [mark] });
  }
  return runs;
}

function Drawn({ mark }: { readonly mark: PageMark }): ReactElement {
  if (mark.kind === "line") return <path d={mark.d} className="printed-line" strokeWidth={mark.widthMm} strokeDasharray={mark.dashMm.length > 0 ? mark.dashMm.join(" ") : undefined} />;
  if (mark.kind === "fill") return <path d={mark.d} className="printed-fill" fillRule="evenodd" />;
  const [a, b, c, d, e, f] = mark.matrix;
  return <text className="printed-words" transform={`matrix(${a} ${b} ${-c} ${-d} ${e} ${f})`} fontSize={mark.sizeMm} fontWeight={mark.bold ? 700 : 400}>{mark.text}</text>;
}
