/** Neighbours of every point, both ways, in ascending order: those of i are `list[start[i]] … list[start[i + 1] - 1]`. */
export interface Adjacency {
  readonly start: Uint32Array;
  readonly list: Uint32Array;
}

/** Neighbours from pairs of points, each pair given once. */
export function adjacencyOf(size: number, low: Uint32Array, high: Uint32Array): Adjacency {
  const start = new Uint32Array(size + 1);
  for (let k = 0; k < low.length; k++) {
    start[low[k]! + 1]!++;
    start[high[k]! + 1]!++;
  }
  for (let i = 0; i < size; i++) start[i + 1]! += start[i]!;
  const list = new Uint32Array(start[size]!);
  const at = start.slice(0, size);
  for (let k = 0; k < low.length; k++) {
    list[at[low[k]!]!++] = high[k]!;
    list[at[high[k]!]!++] = low[k]!;
  }
  for (let i = 0; i < size; i++) list.subarray(start[i]!, start[i + 1]!).sort();
  return { start, list };
}
