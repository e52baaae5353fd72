/** "a", "a and b", "a, b and c"; or with another word before the last. */
export const listed = (names: readonly string[], last: "and" | "or" = "and"): string => (names.length < 2 ? names.join("") : `${names.slice(0, -1).join(", ")} ${last} ${names.at(-1)!}`);

/** A sentence begins with a capital. */
export const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);
