import type { ReactElement } from "react";
import { layers as all, type Layer } from "#sheets/pen.ts";
import { layerWords } from "../state/sheet-words.ts";

interface SheetLayersProps {
  readonly layers: readonly Layer[];
  readonly onChange: (layers: readonly Layer[]) => void;
}

/** What the drawings for a cutting machine hold, each as a word that is in or out. */
export function SheetLayers({ layers, onChange }: SheetLayersProps): ReactElement {
  return (
    <div className="sentence">
      <p>
        SVG and DXF hold{" "}
        {all.map((layer, i) => {
          const inside = layers.includes(layer);
          const alone = inside && layers.length === 1;
          return (
            <span key={layer}>
              {i === 0 ? "" : ", "}
              <button type="button" className={`word in-or-out${inside ? "" : " out"}`} aria-pressed={inside} disabled={alone} onClick={() => onChange(all.filter((l) => (l === layer ? !inside : layers.includes(l))))}>
                {layerWords[layer]}
              </button>
            </span>
          );
        })}
        .
      </p>
      <p className="follows">A word struck through is left out; touch it to have it in again. The printed pages hold everything.</p>
    </div>
  );
}
