/** Upright box on the sheet while it is laid out, measured from its top left corner downward, gap included. */
export interface Box {
  readonly left: number;
  readonly top: number;
  readonly width: number;
  readonly height: number;
}

/**
 * Places along one axis worth trying: page beginnings, page ends less the piece, behind each piece already there, and for what
 * needs several pages some in between, so that its joints can avoid its marks.
 */
export function starts(taken: readonly (readonly number[])[], size: number, step: number, window: number, insetMm: number): readonly number[] {
  const out = new Set<number>([-insetMm]);
  let end = 0;
  for (const [at, length] of taken) {
    out.add(at! + length!);
    end = Math.max(end, at! + length!);
  }
  const shown = size - 2 * insetMm;
  const slack = Math.ceil((shown - (window - step)) / step - 1e-9) * step + (window - step) - shown;
  for (let page = 0; (page - 1) * step <= end; page++) {
    const first = page * step - insetMm;
    for (const share of shown <= window ? [0, 1] : [0, 0.25, 0.5, 0.75, 1]) out.add(first + slack * share);
  }
  return [...out];
}

export const overlap = (a: Box, b: Box): boolean =>
  a.left < b.left + b.width - 1e-9 && b.left < a.left + a.width - 1e-9 && a.top < b.top + b.height - 1e-9 && b.top < a.top + a.height - 1e-9;

export function less(a: readonly number[], b: readonly number[]): boolean {
  for (let i = 0; i < a.length; i++) if (a[i] !== b[i]) return a[i]! < b[i]!;
  return false;
}
