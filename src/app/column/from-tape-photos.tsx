import type { ReactElement } from "react";
import type { TapedShell } from "#tape/taped-shell.ts";
import type { Sight } from "../photos.ts";
import { mm, say } from "../state/numbers.ts";
import { withoutPhoto } from "../state/tape-edits.ts";
import { holds } from "../state/tape-words.ts";
import { FindingsList } from "./findings-list.tsx";
import type { TapeWork } from "./tape-work.ts";

interface TapePhotosProps {
  readonly work: TapeWork;
  readonly tape: TapedShell | undefined;
  readonly sights: ReadonlyMap<string, Sight>;
}

/** Each photograph, what it holds and how well its card was read. */
export function TapePhotos({ work, tape, sights }: TapePhotosProps): ReactElement {
  const { job, said, change } = work;
  return (
    <ul className="photos-read" aria-label="The photographs">
      {said.photos.map((name) => (
        <li key={name}>
          <b>{name}</b>{holds(name, tape) ? `, ${holds(name, tape)}` : ""}. <PhotoRead sight={sights.get(name)} alone={work.waiting} />{" "}
          {said.photos.length > 1 && <button type="button" className="word" onClick={() => change(withoutPhoto(job, name), `taking out ${name}`)} aria-label={`take out ${name}`}>take out</button>}
        </li>
      ))}
    </ul>
  );
}

/** How well the card in a photograph was read, as sentences. */
export function PhotoRead({ sight, alone }: { readonly sight: Sight | undefined; /** No pair tells what was found in it. */ readonly alone: boolean }): ReactElement {
  if (sight === undefined || sight.is === "awaited") return <>It is being laid flat …</>;
  if (sight.is === "refused") return <span className="refused-photo">{sight.sentence}</span>;
  const { check, outlines, findings } = sight.seen;
  const worst = check.heldOut.reduce<(typeof check.heldOut)[number] | undefined>((w, h) => (!w || Math.abs(h.readMm - h.askedMm) > Math.abs(w.readMm - w.askedMm) ? h : w), undefined);
  return (
    <>
      {outlines.length === 0 ? "No outline was found in it." : `${outlines.length === 1 ? "One outline" : `${outlines.length} outlines`} traced.`} Seen {say(check.tiltDeg, 0)}° from straight above.{worst && <> A length of {mm(worst.askedMm)} on the card reads {mm(worst.readMm, 2)}.</>}
      {alone && <FindingsList findings={findings} all={[]} />}
    </>
  );
}
