/** Two digits, as days, months and hours are written. */
export const two = (n: number): string => String(n).padStart(2, "0");

/** "19:40" for minutes from midnight; the end of a day is "24:00". */
export const clockText = (min: number): string => `${two(Math.floor(min / 60))}:${two(min % 60)}`;
