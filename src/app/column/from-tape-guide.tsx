import { useId, useState, type ReactElement } from "react";
import { CardWords } from "./card-words.tsx";

/** How a pattern is taped, laid flat and photographed, for those who do it for the first time. */
export function TapeGuide({ open: opened }: { readonly open: boolean }): ReactElement {
  const [open, setOpen] = useState(opened);
  const id = useId();
  return (
    <div className="sentence">
      <p>
        How to tape a last and photograph the tape, step by step:{" "}
        <button type="button" className="word why" aria-expanded={open} aria-controls={id} onClick={() => setOpen(!open)}>{open ? "close" : "show me"}</button>
      </p>
      <ol className="guide" id={id} hidden={!open}>
        <li>
          <b>Print the card of squares.</b> <CardWords /> Two sheets, at 100 %, never “fit to page”. Joined edge to edge they make a frame; keep it flat, on board if it curls. Lay your rule on its upright bar and note what it reads.
        </li>
        <li>
          <b>Cover one last with tape.</b> Masking tape, 20 to 25 mm wide. A strip from the cone down the front centre and over the toe, another down the back; both turn under the edge. Then strips from the toe backward, inner side first, each half over the one before, as far back as they lie flat. Round the heel strips lie level, like a sling. Two full layers, wrinkles pressed out: a few millimetres here grow in every later piece.
        </li>
        <li>
          <b>Draw on it.</b> Front centre and back centre (the edge of a strip of tape laid straight is the best rule), the topline you want, and a short tick at each joint. Stroke a fine file along the feather edge, from outside inward: it cuts the tape cleanly there.
        </li>
        <li>
          <b>Cut and peel.</b> Along topline, front centre and back centre: two halves, inner and outer. Cut away from the hand that holds the last, with a fresh blade and light pressure.
        </li>
        <li>
          <b>Lay each half flat.</b> Slit only the feather edge, square to it: 5 to 8 slits round the toe, 8 to 10 mm apart and 15 to 30 mm long, ending 10 mm short of the topline; 2 to 4 at joint and waist; one beside the heel, 10 to 15 mm in front of the back. Let them open, not lap. Topline, back and front centre are never cut: their length has to stay true, in this order.
        </li>
        <li>
          <b>Take off the bottom,</b> if you want insole and sole too: press tape or paper to it, mark the feather edge all round, cut along the mark. It is photographed as it is seen from above the shoe, the side that was on the last upward.
        </li>
        <li>
          <b>Photograph.</b> Tape inside the frame, flat, on one plain ground of another colour, clear of the squares. The whole frame in the picture and filling it, from as straight above as you can; even light, no hard shadow, no flash. Both halves together or each in a picture of its own, the bottom too.
        </li>
        <li>
          <b>Open the pictures,</b> all at once or one after the other (JPEG or PNG).
        </li>
      </ol>
    </div>
  );
}
