import { useLayoutEffect, useState, type RefObject } from "react";

/** Width and height of an element in px, kept up to date. */
export function useSize(of: RefObject<HTMLElement | null>): { readonly width: number; readonly height: number } {
  const [size, set] = useState({ width: 0, height: 0 });
  useLayoutEffect(() => {
    const element = of.current;
    if (!element) return;
    const measure = (): void => set({ width: element.clientWidth, height: element.clientHeight });
    const watch = new ResizeObserver(measure);
    watch.observe(element);
    measure();
    return () => watch.disconnect();
  }, [of]);
  return size;
}
