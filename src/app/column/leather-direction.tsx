import type { ReactElement } from "react";
import { upperLayers, type UpperLayer } from "#leather/leather.ts";
import type { Desk } from "../desk.ts";
import { LastingNumber, LastingReason } from "./lasting-number.tsx";
import { WithWhy } from "./why.tsx";

const turnOf: Readonly<Record<UpperLayer, "upperTurnDeg" | "liningTurnDeg">> = { upper: "upperTurnDeg", lining: "liningTurnDeg" };

/** Which way each skin is laid: the direction of least stretch against lengthwise. */
export function LeatherDirection({ desk, onSight }: { readonly desk: Desk; readonly onSight: () => void }): ReactElement {
  return (
    <section aria-label="How the pieces are laid" onFocus={onSight}>
      <h3>How it is laid</h3>
      {upperLayers.map((layer) => (
        <WithWhy key={layer} name={`direction of the ${layer}`} spots={[`lasting ${turnOf[layer]}`]} why={<><LastingReason desk={desk} of={turnOf[layer]} titled={false} /><p>Lengthwise is from the back to the toe. Plus turns the arrow to the left as you look at a piece of the right shoe, toe to the right; the left shoe’s is its mirror image. Lay the like pieces of both shoes on the same part of two like skins.</p></>}>
          The {layer} is laid with its direction of least stretch turned <LastingNumber desk={desk} of={turnOf[layer]} /> from lengthwise.
        </WithWhy>
      ))}
    </section>
  );
}
