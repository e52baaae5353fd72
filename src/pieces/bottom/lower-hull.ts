/** A line that hangs below points: corners by rising place, mm. */
export interface HullLine {
  readonly at: readonly number[];
  readonly height: readonly number[];
}

/** The lowest points as a taut line under all of them, left to right (monotone chain, Andrew 1979). `at` must not fall. */
export function lowerHull(at: readonly number[], height: readonly number[]): HullLine {
  const kept: number[] = [];
  for (let i = 0; i < at.length; i++) {
    for (;;) {
      const n = kept.length;
      if (n < 2) break;
      const a = kept[n - 2]!, b = kept[n - 1]!;
      const turn = (at[b]! - at[a]!) * (height[i]! - height[a]!) - (height[b]! - height[a]!) * (at[i]! - at[a]!);
      if (turn > 0) break;
      kept.pop();
    }
    kept.push(i);
  }
  return { at: kept.map((i) => at[i]!), height: kept.map((i) => height[i]!) };
}

/** Height of the line at a place, its ends held beyond them. */
export function hullHeight({ at, height }: HullLine, x: number): number {
  if (x <= at[0]!) return height[0]!;
  for (let i = 1; i < at.length; i++) {
    if (x > at[i]!) continue;
    const t = (x - at[i - 1]!) / (at[i]! - at[i - 1]!);
    return height[i - 1]! + t * (height[i]! - height[i - 1]!);
  }
  return height[height.length - 1]!;
}

/** Slope of the line at a place: that of the part it lies on. */
export function hullSlope({ at, height }: HullLine, x: number): number {
  let i = 1;
  while (i < at.length - 1 && x > at[i]!) i++;
  return at.length < 2 ? 0 : (height[i]! - height[i - 1]!) / (at[i]! - at[i - 1]!);
}
