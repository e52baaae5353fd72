import { first } from "./first.ts";

/** Planted: a ring of two files. */
export const second = (): number => first() + 1;
