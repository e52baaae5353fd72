/** How long a strip is cut, mm: to the next whole millimetre, ends included. All that tells a strip's length goes by it. */
export const cutLength = (lengthMm: number): number => Math.ceil(lengthMm - 1e-6);
