import type { Gauges } from "#lasting/gauges.ts";
import type { HazardId } from "#making/care/hazards.ts";
import type { Step } from "#making/steps/step.ts";
import type { SheetInput } from "../input.ts";
import type { PageSize } from "../print-paper.ts";
import type { BookRoom } from "./flow.ts";
import type { PictureLines } from "./step-pictures/sketch-lines.ts";

/** What every chapter is written from. */
export interface Book {
  readonly input: SheetInput;
  /** None on a taped pattern. */
  readonly gauges?: Gauges;
  readonly page: PageSize;
  readonly room: BookRoom;
}

/** Drawings of a step, in a column beside it so wide or below what is done so wide, mm. */
export type StepPictures = (step: Step, besideWide: number, belowWide: number) => readonly PictureLines[];

/** For a chapter that tells pages of others. */
export interface PagedBook extends Book {
  /** Printed page of what is named, as far as it is known. */
  readonly pageOf: (anchor: string) => string;
  /** Whether a step tells its caution in full: the first on its page does. */
  readonly inFull: (stepId: string, hazard: HazardId) => boolean;
  /** Drawings of a step; none of many. */
  readonly pictures: StepPictures;
}

/** Names of places in the book that other chapters point to. */
export const stepAnchor = (id: string): string => `step ${id}`;
export const cautionAnchor = (hazard: string): string => `caution ${hazard}`;
