/** Our own mistake: an invariant that did not hold. Never shown as the maker's fault. */
export class Bug extends Error {
  override readonly name = "Bug";
}

/** Throws a {@link Bug} when a thing that must hold does not. */
export function must(holds: unknown, what: string): asserts holds {
  if (!holds) throw new Bug(what);
}
