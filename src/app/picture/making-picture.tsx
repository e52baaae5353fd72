import { useLayoutEffect, useRef, type ReactElement } from "react";
import type { MakingSight } from "../state/making-sight.ts";
import { makingViews, viewWords, type MakingViewProps } from "../state/making-views.ts";
import { MakingCalendar } from "./making-calendar.tsx";
import { MakingCost } from "./making-cost.tsx";
import { MakingList } from "./making-list.tsx";
import { MakingSteps } from "./making-steps.tsx";
import { MakingTools } from "./making-tools.tsx";

interface MakingPictureProps extends MakingViewProps {
  readonly sight: MakingSight;
}

/** One of the five things that are looked at of making a pair. */
export function MakingPicture({ sight, ...props }: MakingPictureProps): ReactElement {
  const { view, onView, scrolled } = sight;
  const page = useRef<HTMLDivElement>(null);
  // Each page is found where it was left.
  useLayoutEffect(() => {
    page.current?.scrollTo({ top: scrolled.get(view) ?? 0, behavior: "instant" });
  }, [view, scrolled]);
  return (
    <>
      <div className="view making" ref={page} tabIndex={0} role="region" aria-label={viewWords[view]} onScroll={(e) => scrolled.set(view, e.currentTarget.scrollTop)}>
        {view === "list" && <MakingList {...props} />}
        {view === "cost" && <MakingCost making={props.making} />}
        {view === "steps" && <MakingSteps {...props} sight={sight} />}
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
