import { useEffect, useState } from "react";
import { makingViews, type MakingView } from "./making-views.ts";

const key = "lastwise view of making";

/** What of making was looked at in this tab before the page was loaded again. */
function keptView(): MakingView {
  try {
    const kept = sessionStorage.getItem(key);
    return makingViews.find((view) => view === kept) ?? "list";
  } catch {
    return "list";
  }
}

function keepView(view: MakingView): void {
  try {
    sessionStorage.setItem(key, view);
  } catch {
    // Where the browser keeps nothing, the page opens as it does at first.
  }
}

/** How the pages of making are looked at; it stays while other pages and other stations are open. */
export interface MakingSight {
  readonly view: MakingView;
  readonly onView: (view: MakingView) => void;
  /** The steps that stand open. */
  readonly opened: ReadonlySet<string>;
  readonly onOpened: (steps: ReadonlySet<string>) => void;
  /** How far down each page was read. */
  readonly scrolled: Map<MakingView, number>;
}

export function useMakingSight(): MakingSight {
  const [view, onView] = useState(keptView);
  const [opened, onOpened] = useState<ReadonlySet<string>>(new Set<string>());
  const [scrolled] = useState(() => new Map<MakingView, number>());
  useEffect(() => keepView(view), [view]);
  return { view, onView, opened, onOpened, scrolled };
}
