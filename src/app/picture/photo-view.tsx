import { useSyncExternalStore, type ReactElement } from "react";
import type { Sight } from "../photos.ts";
import { shownPhoto } from "../state/shown-photo.ts";
import { PhotoFrame, type PhotoDrawing } from "./photo-frame.tsx";
import type { MarkMoves } from "./photo-mark.tsx";

export interface ShownPhoto {
  /** The file's name. */
  readonly name: string;
  /** What it shows, in words, when that is known. */
  readonly holds: string | undefined;
  readonly sight: Sight;
  readonly drawing: PhotoDrawing;
}

interface PhotoViewProps {
  readonly photos: readonly ShownPhoto[];
  readonly moves: MarkMoves;
}

/** The photographs of the work laid flat, one by one or side by side, with outlines and marks drawn over them. */
export function PhotoView({ photos, moves }: PhotoViewProps): ReactElement {
  const picked = useSyncExternalStore(shownPhoto.listen, shownPhoto.look);
  const beside = picked === besides && photos.length > 1;
  const shown = beside ? photos : [photos.find((p) => p.name === picked) ?? photos[0]].filter((p) => p !== undefined);
  return (
    <section className="view photos" aria-label="The photographs">
      <div className={`side-by-side${shown.length > 1 ? " several" : ""}`}>
        {shown.map((p) => <OnePhoto key={p.name} photo={p} moves={moves} titled={shown.length > 1} />)}
      </div>
      {photos.length > 1 && (
        <p className="under choose-photo">
          <span>Show</span>
          {photos.map((p) => <button key={p.name} type="button" className="word" aria-pressed={shown.length === 1 && shown[0] === p} onClick={() => shownPhoto.show(p.name)}>{titleOf(p)}</button>)}
          <button type="button" className="word" aria-pressed={beside} onClick={() => shownPhoto.show(besides)}>all side by side</button>
        </p>
      )}
    </section>
  );
}

/** No file is called so: a name never holds a slash. */
const besides = "/";

const titleOf = ({ name, holds }: ShownPhoto): string => (holds ? `${holds} (${name})` : name);

function OnePhoto({ photo, moves, titled }: { readonly photo: ShownPhoto; readonly moves: MarkMoves; readonly titled: boolean }): ReactElement {
  const { sight } = photo;
  return (
    <figure className="one-photo">
      {titled && <figcaption>{titleOf(photo)}</figcaption>}
      {sight.is === "seen" && <PhotoFrame name={photo.name} photo={sight.seen.flat} drawing={photo.drawing} moves={moves} />}
      {sight.is === "awaited" && <p className="nothing low">Laying {photo.name} flat … <progress max={1} value={sight.fraction} aria-label="how far" /></p>}
      {sight.is === "refused" && <p className="nothing low"><b>{photo.name}</b> cannot be used. {sight.sentence}</p>}
    </figure>
  );
}
