import type { ReactElement } from "react";
import { makingViews, viewWords, type MakingView, type MakingViewProps } from "../state/making-views.ts";

interface MakingPictureProps extends MakingViewProps {
  readonly view: MakingView;
  readonly onView: (view: MakingView) => void;
}

/** One of the five things that are looked at of making a pair. */
export function MakingPicture({ view, onView }: MakingPictureProps): ReactElement {
  return (
    <>
      <div className="view making" />
      <div className="under">
        <p>
          <span>Look at</span>
          {makingViews.map((v) => <button key={v} type="button" className="word" aria-pressed={v === view} onClick={() => onView(v)}>{viewWords[v]}</button>)}
        </p>
      </div>
    </>
  );
}
