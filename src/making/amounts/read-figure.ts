import type { Written } from "../said.ts";

/** Why a number could not be read. */
export type FigureWrong = "empty" | "words" | "negative" | "ambiguous" | "huge";
export type FigureRead = { readonly value: number; readonly wrong?: undefined } | { readonly wrong: FigureWrong };

/** More than any price or count of this trade. */
const most = 1e9;

/**
 * A number as people write it: point or comma before the decimals, spaces, apostrophes, points or commas between thousands.
 * One point or comma before just three digits ("1,234") may be either: it parts thousands where a whole number is wanted and is not read else.
 */
export function readFigure(written: Written, wanted: "any" | "whole" = "any"): FigureRead {
  if (typeof written === "number") return Number.isFinite(written) ? judged(written) : { wrong: "words" };
  const text = written.trim();
  if (text === "") return { wrong: "empty" };
  const [, sign = "", digits] = /^([+\-−–]?)\s*(\d[\d\s.,'’]*|[.,]\d+)$/.exec(text) ?? [];
  const plain = digits === undefined ? undefined : plainDigits(digits.trimEnd(), wanted);
  if (plain === undefined) return { wrong: "words" };
  if (plain === "ambiguous") return { wrong: "ambiguous" };
  return judged(sign === "" || sign === "+" ? Number(plain) : -Number(plain));
}

function judged(value: number): FigureRead {
  if (value < 0) return { wrong: "negative" };
  return value > most ? { wrong: "huge" } : { value: value === 0 ? 0 : value };
}

/** Digits with a point alone before the decimals; undefined where signs stand where none can. */
function plainDigits(text: string, wanted: "any" | "whole"): string | "ambiguous" | undefined {
  const marks = [...text.matchAll(/[.,]/g)].map(({ 0: mark, index }) => ({ mark, index }));
  const last = marks.at(-1);
  if (last === undefined) return wholeDigits(text);
  const alike = marks.filter(({ mark }) => mark === last.mark).length;
  if (marks.length === alike && alike > 1) return wholeDigits(text);
  if (alike > 1) return undefined;
  const head = text.slice(0, last.index), tail = text.slice(last.index + 1);
  if (marks.length === 1 && /^[1-9]\d{0,2}$/.test(head) && /^\d{3}$/.test(tail)) return wanted === "whole" ? head + tail : "ambiguous";
  const whole = head === "" ? "0" : wholeDigits(head);
  return whole === undefined || !/^\d*$/.test(tail) ? undefined : `${whole}.${tail || "0"}`;
}

/** Digits without what parts their thousands: one kind of sign, between groups of three. */
function wholeDigits(text: string): string | undefined {
  if (/^\d+$/.test(text)) return text;
  const parting = text.replaceAll(/\d/g, "");
  const grouped = /^\d{1,3}(?:[\s.,'’]\d{3})+$/.test(text) && [...parting].every((sign) => sign === parting[0]);
  return grouped ? text.replaceAll(/\D/g, "") : undefined;
}
