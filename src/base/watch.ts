/** How long work tells where it is. Called from inside the core; must not throw, except to cancel. */
export type Watch = (stage: string, fraction: number) => void;

/** For callers that do not watch. */
export const unwatched: Watch = () => {};

/** Thrown out of a {@link Watch} to stop long work. */
export class Cancelled extends Error {
  override readonly name = "Cancelled";
  constructor() {
    super("cancelled");
  }
}
