import { readFileSync } from "node:fs";

/** Planted: disk, clock and chance in the core. */
export const wrong = [readFileSync, Date.now, Math.random, Math.acos];
