/**
 * How the trade numbers the fineness of a thread. Tex is the mass of 1000 m in grams (ISO 1139), of the finished thread with all its plies;
 * denier is the mass of 9000 m. Ticket numbers are threefold numbers, as if every thread had three plies (trade pages on ticket numbers): 3 × 1000 / tex
 * for the metric one, the same with yards and pounds for cotton's. A higher ticket is a finer thread, a higher tex a thicker one.
 */
const gramsPerNm = 1000;
/** Tex of a cotton number of one, 840 yards to the pound. */
const texOfCottonOne = 590.54;
const ticketPlies = 3;

/** Tex of a metric ticket number; 60 is 50 tex. */
export const ticketToTex = (ticket: number): number => (ticketPlies * gramsPerNm) / ticket;
export const denierOfTex = (tex: number): number => 9 * tex;
export const texToCottonTicket = (tex: number): number => (ticketPlies * texOfCottonOne) / tex;

/** Polyester, g/cm³, and how much of its round a thread fills (assumed). */
const density = 1.38, filled = 0.6;

/** Diameter of a round polyester thread, mm: tex = 1000 · filled · density · π d² / 4, of d in mm. */
export const threadDiameter = (tex: number): number => Math.sqrt((4 * tex) / (1000 * Math.PI * density * filled));
