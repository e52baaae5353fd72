/** Loads are told for a strip of this width, mm: the pull of lasting pincers is told on the same. */
export const toldWidthMm = 20;
/** The load at which a leather's stretch is told, N on {@link toldWidthMm}. */
export const toldN = 10;
