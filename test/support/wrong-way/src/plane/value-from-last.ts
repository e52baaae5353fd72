import { finding } from "../../../../../src/base/findings.ts";
import { medialSign } from "../../../../../src/last/last.ts";

/** Planted: a value from downstream by a relative path. */
export const both = [finding, medialSign];
