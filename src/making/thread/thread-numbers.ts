/**
 * How the trade numbers the fineness of a thread. Tex is the mass of 1000 m in grams (ISO 1139), of the finished thread with all its plies;
 * denier is the mass of 9000 m, decitex that of 10 000 m; a metric number Nm is the metres of one gram. Ticket numbers are threefold numbers: as
 * if every thread had three plies (trade pages on ticket numbers). A higher ticket is a finer thread, a higher tex a thicker one.
 */
const gramsPerNm = 1000;
/** Tex of a cotton number of one, 840 yards to the pound. */
const texOfCottonOne = 590.54;
const ticketPlies = 3;

export const denierOfTex = (tex: number): number => 9 * tex;
export const texOfDenier = (denier: number): number => denier / 9;
export const dtexOfTex = (tex: number): number => 10 * tex;
export const texOfDtex = (dtex: number): number => dtex / 10;
export const nmOfTex = (tex: number): number => gramsPerNm / tex;
export const texOfNm = (nm: number): number => gramsPerNm / nm;

/** Tex of a metric ticket number; 60 is 50 tex. */
export const ticketToTex = (ticket: number): number => (ticketPlies * gramsPerNm) / ticket;
export const texToTicket = (tex: number): number => (ticketPlies * gramsPerNm) / tex;
export const cottonTicketToTex = (ticket: number): number => (ticketPlies * texOfCottonOne) / ticket;
export const texToCottonTicket = (tex: number): number => (ticketPlies * texOfCottonOne) / tex;

/** Metric ticket of a thread of `plies` yarns of number `nm` each: Nm 60/3 is ticket 60, Nm 80/4 as well. */
export const ticketOfPlies = (nm: number, plies: number): number => (ticketPlies * nm) / plies;

/** Mass in g/cm³, and how much of its round a thread fills: polyester, and an assumed share. */
export interface ThreadStuff {
  readonly density: number;
  readonly filled: number;
}
export const polyester: ThreadStuff = { density: 1.38, filled: 0.6 };

/** Diameter of a round thread, mm: tex = 1000 · filled · density · π d² / 4, of d in mm. */
export const threadDiameter = (tex: number, { density, filled }: ThreadStuff = polyester): number => Math.sqrt((4 * tex) / (1000 * Math.PI * density * filled));

/** Makers name a thread by a round tex near its ticket: by so large a share may the two be apart. */
const roundedBy = 0.15;

/** What is wrong with one row of a thread chart; nothing where tex and ticket mean the same thread. Charts that mix numberings up are in use. */
export function wrongThreadRow({ tex, ticket }: { readonly tex: number; readonly ticket: number }): string | undefined {
  const should = ticketToTex(ticket);
  if (should > 0 && Math.abs(tex - should) <= roundedBy * should) return undefined;
  return `Ticket ${ticket} is ${plain(should)} tex, not ${plain(tex)}; ${plain(tex)} tex is ticket ${plain(texToTicket(tex))}.`;
}

const plain = (value: number): string => String(Math.round(value * 10) / 10);
