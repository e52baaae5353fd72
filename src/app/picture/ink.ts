import { useEffect, useState } from "react";
import type { LineKey } from "./drawn-lines.ts";

/** Colours that the pictures need as plain values; they follow the light or the dark theme. */
export interface Ink {
  readonly paper: string;
  readonly ink: string;
  readonly soft: string;
  readonly accent: string;
  readonly wood: string;
  readonly card: string;
}

const names: Readonly<Record<keyof Ink, string>> = { paper: "--paper", ink: "--ink", soft: "--soft", accent: "--accent", wood: "--wood", card: "--card" };

function read(): Ink {
  const style = getComputedStyle(document.documentElement);
  return Object.fromEntries(Object.entries(names).map(([k, v]) => [k, style.getPropertyValue(v).trim()])) as unknown as Ink;
}

export function useInk(): Ink {
  const [ink, set] = useState(read);
  useEffect(() => {
    const dark = matchMedia("(prefers-color-scheme: dark)");
    const again = (): void => set(read());
    dark.addEventListener("change", again);
    return () => dark.removeEventListener("change", again);
  }, []);
  return ink;
}

/** Inks on the stretch map, which is light in both themes. */
export const onMap = { ink: "#1e1b18", accent: "#9c1133" } as const;

/** The same line has the same ink on the last and on the card: colour, width (px) and whether it is broken. */
export function lineInk(key: LineKey): { readonly accent: boolean; readonly width: number; readonly dash: boolean } {
  if (key === "topline") return { accent: true, width: 3, dash: false };
  if (key === "feather") return { accent: false, width: 2.4, dash: false };
  if (key === "back") return { accent: false, width: 1.8, dash: false };
  return { accent: false, width: 1.3, dash: true };
}
