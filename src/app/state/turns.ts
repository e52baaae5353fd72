/** What a piece of long work brings when it is asked for again and again: only the newest wish is worth doing. */
export interface Turns<W> {
  readonly running?: { readonly id: number; readonly wish: W };
  readonly waiting?: W;
  readonly nextId: number;
}

export const noTurns: Turns<never> = { nextId: 1 };

/** Asks for `wish`: it starts at once, or takes the place of the one that waits. `start` is what must be sent now. */
export function ask<W>(t: Turns<W>, wish: W): { readonly turns: Turns<W>; readonly start?: { readonly id: number; readonly wish: W } } {
  if (t.running) return { turns: { ...t, waiting: wish } };
  const start = { id: t.nextId, wish };
  return { turns: { running: start, nextId: t.nextId + 1 }, start };
}

/** An answer came. It counts only when it belongs to what runs; then the waiting wish starts. */
export function answered<W>(t: Turns<W>, id: number): { readonly turns: Turns<W>; readonly counts: boolean; readonly start?: { readonly id: number; readonly wish: W } } {
  if (t.running?.id !== id) return { turns: t, counts: false };
  if (t.waiting === undefined) return { turns: { nextId: t.nextId }, counts: true };
  const start = { id: t.nextId, wish: t.waiting };
  return { turns: { running: start, nextId: t.nextId + 1 }, counts: true, start };
}

/** Stopped: nothing runs, nothing waits, and an answer that still comes does not count. */
export function stopped<W>(t: Turns<W>): Turns<W> {
  return { nextId: t.nextId };
}
