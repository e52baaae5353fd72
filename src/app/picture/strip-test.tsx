import type { ReactElement } from "react";
import { letterHeight, type StripSketch } from "#leather/strip-sketch.ts";
import { stripDrawing } from "#leather/strip-drawing.ts";

const sketches = stripDrawing();

/** How a strip is cut, marked, loaded and read: the drawings that the guide has too. */
export function StripTestView(): ReactElement {
  return (
    <section className="view strip-test" aria-label="How a strip is tested" tabIndex={0}>
      {sketches.map((sketch) => <Drawing key={sketch.key} sketch={sketch} />)}
    </section>
  );
}

function Drawing({ sketch: { title, width, height, lines, words } }: { readonly sketch: StripSketch }): ReactElement {
  return (
    <figure>
      <figcaption>{title}</figcaption>
      <svg viewBox={`0 0 ${width} ${height}`} role="img" aria-label={`${title}: ${words.map((w) => w.text).join("; ")}`}>
        {lines.map(({ kind, xy, closed }, i) => <path key={i} className={`sketch ${kind}`} d={`M${xy.join(" ")}${closed ? "Z" : ""}`} />)}
        {words.map(({ text, x, y, anchor }, i) => <text key={i} x={x} y={y} textAnchor={anchor} fontSize={letterHeight}>{text}</text>)}
      </svg>
    </figure>
  );
}
