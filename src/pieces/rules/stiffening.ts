import type { Rule } from "#lines/lines.ts";

/** Counter, toe puff and tapes; mm. What of them lies under the upper belongs to the shell's settings. */
export interface StiffeningSettings {}

export const stiffeningRules: Readonly<Record<keyof StiffeningSettings, Rule>> = {};
