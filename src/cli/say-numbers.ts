// Numbers as they stand in sentences.
export const mm = (value: number): string => `${value.toFixed(1)} mm`;
export const percent = (share: number): string => `${(100 * share).toFixed(1)} %`;
