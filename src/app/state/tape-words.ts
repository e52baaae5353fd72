import type { TapeMark } from "#tape/said.ts";
import type { TapedHalfName, TapedPoint, TapedShell } from "#tape/taped-shell.ts";

export const halfNames: Readonly<Record<TapedHalfName, string>> = { medial: "inner half", lateral: "outer half" };

type Corner = "toe" | "throat" | "back" | "seat" | "joint";
export const corners: readonly Corner[] = ["toe", "throat", "back", "seat", "joint"];

export const markOf = (corner: Corner, half: TapedHalfName): TapeMark => `${corner}${half === "medial" ? "Medial" : "Lateral"}`;

/** The first word is the mark's own, what follows says whose it is. */
export const markNames: Readonly<Record<TapeMark, string>> = {
  toeMedial: "toe, inner half",
  throatMedial: "throat, inner half",
  backMedial: "back, inner half",
  seatMedial: "seat, inner half",
  jointMedial: "joint, inner half",
  toeLateral: "toe, outer half",
  throatLateral: "throat, outer half",
  backLateral: "back, outer half",
  seatLateral: "seat, outer half",
  jointLateral: "joint, outer half",
  bottomToe: "toe, bottom",
  bottomSeat: "seat, bottom",
  bottomJointMedial: "inner joint, bottom",
  bottomJointLateral: "outer joint, bottom",
};

export const howWords: Readonly<Record<TapedPoint["how"], string>> = { found: "found", said: "placed by you", estimated: "estimated" };

/** What a photograph holds of the pattern: "both halves and the bottom". */
export function holds(photo: string, tape: TapedShell | undefined): string | undefined {
  const halves = (["medial", "lateral"] as const).filter((h) => tape?.[h].photo === photo);
  const parts = [halves.length === 2 ? "both halves" : halves[0] && halfNames[halves[0]], tape?.bottom?.photo === photo ? "the bottom" : undefined].filter((p) => p !== undefined);
  return parts.length > 0 ? parts.join(" and ") : undefined;
}
