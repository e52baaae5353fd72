import type { ReactElement } from "react";
import type { TapedHalf, TapedShell } from "#tape/taped-shell.ts";
import { mm, percent, sayFixed } from "../state/numbers.ts";

/** What was found in the photographs of a tape: both halves, how they meet, and the bottom. */
export function TapeFound({ tape }: { readonly tape: TapedShell }): ReactElement {
  const { medial, lateral, bottom, apart, length } = tape;
  const widest = apart.reduce<TapedShell["apart"][number] | undefined>((a, b) => (!a || b.apartMm > a.apartMm ? b : a), undefined);
  const row = (name: string, of: (half: TapedHalf) => number): ReactElement => (
    <tr><th scope="row">{name}</th><td>{sayFixed(of(medial))}</td><td>{sayFixed(of(lateral))}</td></tr>
  );
  return (
    <>
      <p className="sentence">
        Both halves were found. They are laid to one centre line, toe to toe and throat to throat{widest && <>; mirrored onto each other their toplines lie up to {mm(widest.apartMm)} apart, {percent(widest.share, 0)} of the way from the back</>}.
      </p>
      <table className="figures">
        <caption>The halves as they lie on the table, mm</caption>
        <thead><tr><th scope="col">net, no allowance</th><th scope="col">inner</th><th scope="col">outer</th></tr></thead>
        <tbody>
          {row("toe to throat, straight", (h) => h.lengths.centre)}
          {row("back, feather edge to topline", (h) => h.lengths.back)}
          {row("topline", (h) => h.lengths.topline)}
          {row("feather edge, less open slits", (h) => h.lengths.feather)}
          {row("toe to joint along that edge", (h) => h.lengths.toeToJoint)}
          {row("slits stand open, together", (h) => h.lengths.slitsOpen)}
          {row("centre bows off straight", (h) => h.lengths.centreBow)}
        </tbody>
      </table>
      <p className="sentence">
        {bottom
          ? <>The bottom is {mm(bottom.lengthMm)} long, {mm(bottom.ballWidthMm)} wide at the ball and {mm(bottom.seatWidthMm)} at the seat.</>
          : <>There is no bottom among the photographs. The length of the last is estimated from the halves, about {mm(length.mm, 0)}.</>}
      </p>
    </>
  );
}
