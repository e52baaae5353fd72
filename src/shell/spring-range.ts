/**
 * Spring at the topline, mm: what is usual on a pump with room on both sides (common practice, no source), and the most that may be asked
 * for either way. Together, a pattern may allow less: that is found when it is laid.
 */
export const springRange = { usual: { min: -10, max: 20, step: 0.5 }, most: 60 } as const;
