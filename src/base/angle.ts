/** Inverse sine in radians of a value that rounding may have put just outside −1 … 1. */
export const asinClamped = (x: number): number => Math.asin(Math.max(-1, Math.min(1, x)));
