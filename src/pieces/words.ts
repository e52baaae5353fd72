import type { Half } from "#lines/feather.ts";
import type { EdgeRole, NetEdge, NetPanel } from "./panel.ts";

/** What a maker calls the halves of a piece, and the edges of a panel. */
export const halfWords: Readonly<Record<Half, string>> = { medial: "inside", lateral: "outside" };

export const edgeNames: Readonly<Record<EdgeRole, string>> = {
  feather: "lasting margin", topline: "topline", back: "back seam", "inner waist": "inner seam", side: "side seam",
};

/** A half beside a name, after a comma; nothing for what lies over both. */
export const sideWord = (half: Half | undefined): string => (half === undefined ? "" : `, ${halfWords[half]}`);

/** An edge and its half; the inner seam has but one. */
export const edgeWord = ({ role, half }: Pick<NetEdge, "role" | "half">): string => `${edgeNames[role]}${role === "inner waist" || role === "topline" ? "" : sideWord(half)}`;

/** The trade's name of a panel of the upper. */
export const panelWord = ({ name }: Pick<NetPanel, "name">): string => (name === "whole" ? "upper" : name);
