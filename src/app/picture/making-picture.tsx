import { useEffect, useRef, type ReactElement } from "react";
import { makingViews, viewWords, type MakingView, type MakingViewProps } from "../state/making-views.ts";
import { MakingCalendar } from "./making-calendar.tsx";
import { MakingCost } from "./making-cost.tsx";
import { MakingList } from "./making-list.tsx";
import { MakingSteps } from "./making-steps.tsx";
import { MakingTools } from "./making-tools.tsx";

interface MakingPictureProps extends MakingViewProps {
  readonly view: MakingView;
  readonly onView: (view: MakingView) => void;
}

/** One of the five things that are looked at of making a pair. */
export function MakingPicture({ view, onView, ...props }: MakingPictureProps): ReactElement {
  const page = useRef<HTMLDivElement>(null);
  useEffect(() => {
    page.current?.scrollTo({ top: 0 });
  }, [view]);
  return (
    <>
      <div className="view making" ref={page} tabIndex={0} role="region" aria-label={viewWords[view]}>
        {view === "list" && <MakingList {...props} />}
        {view === "cost" && <MakingCost making={props.making} />}
        {view === "steps" && <MakingSteps {...props} />}
        {view === "calendar" && <MakingCalendar {...props} />}
        {view === "tools" && <MakingTools making={props.making} />}
      </div>
      <div className="under">
        <p>
          <span>Look at</span>
          {makingViews.map((v) => <button key={v} type="button" className="word" aria-pressed={v === view} onClick={() => onView(v)}>{viewWords[v]}</button>)}
        </p>
      </div>
    </>
  );
}
