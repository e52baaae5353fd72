import type { Leather, ToplineEdge } from "#shell/settings.ts";

/** What leathers and edges are called inside a sentence. */
export const leatherWords: Readonly<Record<Leather, string>> = { kid: "kid or calf", firm: "firm or tightly lined leather", soft: "soft sheep or nappa" };
export const edgeWords: Readonly<Record<ToplineEdge, string>> = { taped: "folded over a tape", folded: "folded without a tape", raw: "cut raw", bound: "bound, the strip turned inside", wrapped: "bound, the strip round the edge", bagged: "bagged with the lining" };
