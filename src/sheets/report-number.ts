/** A tenth of a micrometre: finer than any use, coarse enough to read. */
export const round = (v: number): number => Math.round(v * 1e4) / 1e4;
