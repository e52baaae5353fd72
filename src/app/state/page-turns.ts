/** The page, from 0, that a key leads to; nothing where it is not one that turns pages. Before the first and after the last there is none. */
export function turned(key: string, at: number, pages: number): number | undefined {
  const last = pages - 1;
  const to: Readonly<Record<string, number>> = { ArrowRight: at + 1, ArrowDown: at + 1, PageDown: at + 1, ArrowLeft: at - 1, ArrowUp: at - 1, PageUp: at - 1, Home: 0, End: last };
  const wanted = to[key];
  return wanted === undefined ? undefined : Math.min(last, Math.max(0, wanted));
}
