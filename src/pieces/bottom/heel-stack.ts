/** One layer of the heel, from the sole down: its thickness at the back and at the breast, mm. */
export interface HeelLayer {
  readonly name: string;
  readonly backMm: number;
  readonly breastMm: number;
}

export interface StackWanted {
  /** Height from the levelled seat to the ground. */
  readonly backMm: number;
  readonly breastMm: number;
  readonly liftMm: number;
  readonly topPieceMm: number;
}

/** A top piece thinner than this wears through at once, and a lift pared thinner than this at an end breaks (common practice, no source). */
const leastTopPieceMm = 2.5;
const leastEndMm = 0.5;
/** The first lift may be cut from leather so much stouter than the others (a stout one goes with light ones: school notes on heels, 1935 to 1950). */
const stouterMm = 1;

/**
 * Lifts of one substance under the first one, which is pared to what is left and takes the whole taper, and an even top piece. Where there
 * is no room for a lift the top piece takes height and taper alone; where there is none for a top piece, no layers. All layers add up to
 * the height at both ends.
 */
export function heelStack({ backMm, breastMm, liftMm, topPieceMm }: StackWanted): readonly HeelLayer[] {
  const thin = Math.min(backMm, breastMm), thick = Math.max(backMm, breastMm);
  if (!(thin > 0) || thick < leastTopPieceMm) return [];
  const room = thin - topPieceMm;
  if (room < leastEndMm) return [{ name: "top piece", backMm, breastMm }];
  const { even, count } = evenLifts(room, thick - topPieceMm, liftMm);
  const first = (height: number): number => height - topPieceMm - count * even;
  return [
    { name: "lift 1", backMm: first(backMm), breastMm: first(breastMm) },
    ...Array.from({ length: count }, (_, i) => ({ name: `lift ${i + 2}`, backMm: even, breastMm: even })),
    { name: "top piece", backMm: topPieceMm, breastMm: topPieceMm },
  ];
}

/** How many even lifts go below the first, and how thick they are: of full substance wherever the first can take what is left. */
function evenLifts(thin: number, thick: number, liftMm: number): { readonly even: number; readonly count: number } {
  const most = liftMm + stouterMm;
  const full = Math.floor((thin - leastEndMm) / liftMm);
  if (thick - full * liftMm <= most) return { even: liftMm, count: full };
  // The first would be thicker than any leather for it: one lift more, and all pared alike, as far as the first's two ends allow.
  const count = full + 1;
  const share = Math.max((thick - most) / count, (thin - leastEndMm) / (count + 1));
  return { even: Math.min(liftMm, (thin - leastEndMm) / count, share), count };
}
