import type { Rule } from "#lines/lines.ts";

/** Strap, gore, bow, strips and toe cap; mm. */
export interface ExtraSettings {}

export const extraRules: Readonly<Record<keyof ExtraSettings, Rule>> = {};
