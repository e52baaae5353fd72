import type { Spot } from "../state/spot.ts";

/** Brings the number or the word of a spot before the maker's eyes, and her hand on it; a heading that is closed over it is opened. */
export function goToSpot(spot: Spot): void {
  const field = document.querySelector<HTMLElement>(`#open-station [data-spot="${spot}"]`);
  if (!field) return;
  const folded = field.closest<HTMLElement>(".folded-in[hidden]");
  if (folded) document.querySelector<HTMLElement>(`[aria-controls="${folded.id}"]`)?.click();
  requestAnimationFrame(() => {
    field.scrollIntoView({ block: "center" });
    field.focus({ preventScroll: true });
  });
}
