/** The six numbers by which a content stream moves what it draws: x = a·x + c·y + e, y = b·x + d·y + f. */
export type PdfMatrix = readonly [number, number, number, number, number, number];

/** The matrix that applies `a`, then `b`. */
export const times = (a: PdfMatrix, b: PdfMatrix): PdfMatrix => [
  a[0] * b[0] + a[1] * b[2],
  a[0] * b[1] + a[1] * b[3],
  a[2] * b[0] + a[3] * b[2],
  a[2] * b[1] + a[3] * b[3],
  a[4] * b[0] + a[5] * b[2] + b[4],
  a[4] * b[1] + a[5] * b[3] + b[5],
];
