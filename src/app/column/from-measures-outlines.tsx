import { useRef, type ReactElement } from "react";
import { capital } from "#base/listed.ts";
import type { OutlineFiles } from "#job/job.ts";
import type { Pair } from "#job/pair.ts";
import type { Desk } from "../desk.ts";
import { photosOfPair, useSights } from "../photos.ts";
import { setOutline } from "../state/tape-edits.ts";
import { BarSentence } from "./bar-sentence.tsx";
import { CardWords } from "./card-words.tsx";
import { Chooser } from "./chooser.tsx";
import { PhotoRead } from "./from-tape-photos.tsx";
import { WithWhy } from "./why.tsx";

const kinds = [
  { which: "bottom", name: "the drawing round the bottom", does: "the last standing on the paper at its own height" },
  { which: "side", name: "the drawing round the side", does: "the last lying on its outer side" },
] as const;

interface MeasuredOutlinesProps {
  readonly desk: Desk;
  /** Nothing while no pair can be made. */
  readonly pair: Pair | undefined;
  readonly outlines: OutlineFiles | undefined;
}

/** Drawings of the last that may stand beside its measures: photographed with the card, traced, and used for its shape. */
export function MeasuredOutlines({ desk, pair, outlines }: MeasuredOutlinesProps): ReactElement {
  const names = kinds.flatMap(({ which }) => outlines?.[which] ?? []);
  const sights = useSights(desk, photosOfPair(pair));
  return (
    <>
      <h3>Its shape, drawn round</h3>
      <WithWhy
        name="drawings of the last"
        spots={[]}
        why={
          <>
            <p>Two drawings say more about a shape than any set of tape numbers. <CardWords /> Print it at 100 %, lay its frame round the drawing, and photograph both from above.</p>
            <p><b>Bottom:</b> stand the last on the paper on its heel block, as it stands in the shoe, and go round it once with a thin pencil held upright.</p>
            <p><b>Side:</b> lay the last on the paper, its bottom and comb square to it (a book against the bottom helps; chock up the toe), and go round it in the same way.</p>
            <p>Length, girths and widths stay those you typed; the drawings decide what lies between.</p>
          </>
        }
      >
        {names.length === 0 ? "Without a drawing the shape between the numbers is the tool’s own guess." : names.length === 1 ? "One drawing helps to shape it." : "Both drawings help to shape it."}
      </WithWhy>
      {kinds.map(({ which, name, does }) => <OneOutline key={which} desk={desk} which={which} name={name} does={does} photo={outlines?.[which]} sight={outlines?.[which] === undefined ? undefined : sights.get(outlines[which])} />)}
      {names.length > 0 && <BarSentence fields={desk} job={desk.job} barMm={outlines?.barMm} />}
    </>
  );
}

interface OneOutlineProps {
  readonly desk: Desk;
  readonly which: "bottom" | "side";
  readonly name: string;
  readonly does: string;
  readonly photo: string | undefined;
  readonly sight: Parameters<typeof PhotoRead>[0]["sight"];
}

function OneOutline({ desk, which, name, does, photo, sight }: OneOutlineProps): ReactElement {
  const chooser = useRef<HTMLInputElement>(null);
  const choose = (text: string): ReactElement => <button type="button" className="word" aria-label={`${text}: ${name}`} onClick={() => chooser.current?.click()}>{text}</button>;
  return (
    <div className="sentence">
      {photo === undefined
        ? <p>{choose("Open a photograph")} of {name}, {does}.</p>
        : (
          <p>
            {capital(name)} is <b>{photo}</b>. <PhotoRead sight={sight} alone={false} /> {choose("Replace it")} or{" "}
            <button type="button" className="word" aria-label={`take out ${name}`} onClick={() => desk.changeLast(setOutline(desk.job, which, undefined), `taking out ${name}`)}>take it out</button>.
          </p>
        )}
      <Chooser at={chooser} label={`photograph of ${name}`} accept="image/jpeg,image/png" onFiles={(files) => void desk.openInto(files.slice(0, 1), (job, [file]) => setOutline(job, which, file), `opening ${name}`)} />
    </div>
  );
}
