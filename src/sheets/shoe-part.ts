/** A part of the shoe seen from its outside: the stretch of it between two shares of the length, 0 at the back and 1 at the toe. */
export interface ShoePart {
  readonly of: "upper" | "topline" | "bottom";
  readonly from: number;
  readonly to: number;
}

/** Places by what a piece is called; the first that fits. Shares are only as true as a picture of 22 mm needs. */
const places: readonly (readonly [RegExp, ShoePart])[] = [
  [/^toe (puff|cap)/, { of: "upper", from: 0.74, to: 1 }],
  [/topline|binding|tape/, { of: "topline", from: 0, to: 1 }],
  [/back strip/, { of: "upper", from: 0, to: 0.08 }],
  [/stiffener|heel pocket|counter/, { of: "upper", from: 0, to: 0.27 }],
  [/side lining/, { of: "upper", from: 0.27, to: 0.62 }],
  [/strap|gore/, { of: "topline", from: 0.35, to: 0.6 }],
  [/bow/, { of: "topline", from: 0.58, to: 1 }],
  [/quarter/, { of: "upper", from: 0, to: 0.52 }],
  [/vamp/, { of: "upper", from: 0.48, to: 1 }],
  [/^(upper|lining)/, { of: "upper", from: 0, to: 1 }],
  [/second insole board|second board/, { of: "bottom", from: 0, to: 0.62 }],
  [/shank/, { of: "bottom", from: 0.14, to: 0.56 }],
  [/filler/, { of: "bottom", from: 0.06, to: 0.94 }],
  [/lift|top piece|heel/, { of: "bottom", from: 0, to: 0.24 }],
  [/half sock|sock, half/, { of: "bottom", from: 0, to: 0.6 }],
  [/insole|outsole|sole|sock/, { of: "bottom", from: 0, to: 1 }],
];

/** Which part of the shoe a piece of this name belongs to; none for what has no place of its own. */
export const partOf = (pieceName: string): ShoePart | undefined => places.find(([name]) => name.test(pieceName))?.[1];
