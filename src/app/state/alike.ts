/** What is said in parts, each under its own name. */
export type Tree = Readonly<Record<string, unknown>>;
export const isTree = (v: unknown): v is Tree => typeof v === "object" && v !== null;

/** Whether two say the same; a part that is undefined is not said. */
export const alike = (a: unknown, b: unknown): boolean => {
  if (!isTree(a) || !isTree(b)) return a === b;
  return [...new Set([...Object.keys(a), ...Object.keys(b)])].every((key) => alike(a[key], b[key]));
};
