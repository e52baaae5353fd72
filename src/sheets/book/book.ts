import type { Gauges } from "#lasting/gauges.ts";
import type { SheetInput } from "../input.ts";
import type { PageSize } from "../print-paper.ts";
import type { BookRoom } from "./flow.ts";

/** What every chapter is written from. */
export interface Book {
  readonly input: SheetInput;
  /** None on a taped pattern. */
  readonly gauges?: Gauges;
  readonly page: PageSize;
  readonly room: BookRoom;
}

/** For a chapter that tells pages of others. */
export interface PagedBook extends Book {
  /** Printed page of what is named, as far as it is known. */
  readonly pageOf: (anchor: string) => string;
}

/** Names of places in the book that other chapters point to. */
export const stepAnchor = (id: string): string => `step ${id}`;
export const cautionAnchor = (hazard: string): string => `caution ${hazard}`;
