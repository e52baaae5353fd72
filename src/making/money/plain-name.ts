/** Capitals, hyphens and spaces do not matter in a name. */
export const plainName = (name: string): string => name.trim().toLowerCase().replaceAll(/[\s_-]+/gu, " ");
