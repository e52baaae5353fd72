import type { ReactElement } from "react";
import type { Finding } from "#base/findings.ts";
import type { TapeMark } from "#tape/said.ts";
import { shownPhoto } from "../state/shown-photo.ts";
import { marksOf } from "../state/spots.ts";
import { markNames } from "../state/tape-words.ts";

/** Brings the photograph that holds the mark before the maker and its handle under her keys. */
export function goToMark(mark: TapeMark, photo: string | undefined): void {
  const handle = (): SVGElement | null => document.querySelector(`[data-mark="${mark}"]`);
  if (!handle() && photo !== undefined) shownPhoto.show(photo);
  // The photograph may have to be drawn first.
  setTimeout(() => handle()?.focus(), 60);
}

/** The ways to the marks that a finding speaks of. */
export function MarksNamed({ of, photoOf }: { readonly of: Finding | undefined; readonly photoOf: (mark: TapeMark) => string | undefined }): ReactElement | null {
  const marks = of ? marksOf(of) : [];
  if (marks.length === 0) return null;
  return (
    <>
      Go to{" "}
      {marks.map((mark, i) => (
        <span key={mark}>{i > 0 ? " or " : ""}<button type="button" className="word" onClick={() => goToMark(mark, photoOf(mark))}>the {markNames[mark]}</button></span>
      ))}{" "}
      in the picture.{" "}
    </>
  );
}
