/**
 * The closed path round `stations` columns of `states` each that gathers the most reward and bends the least:
 * greatest Σ reward[i][s_i] − bend · Σ (s_{i+1} − s_i)², neighbouring states at most `reach` apart. Dynamic programming on the
 * ring cut open at `start`, whose state is held at `startState` so that the path closes. The same as the cheapest closed cycle
 * in the graph of those steps (Dijkstra on a cut-open band), for a graph that has layers.
 * @param reward stations × states, row by row
 * @returns the state at each station
 */
export function cheapestCycle(reward: Float64Array, states: number, bend: number, reach: number, start: number, startState: number): Uint32Array {
  const stations = reward.length / states;
  let best = new Float64Array(states).fill(-Infinity);
  best[startState] = 0;
  const from = new Int32Array(stations * states);
  for (let k = 1; k <= stations; k++) {
    const row = states * ((start + k) % stations);
    const next = new Float64Array(states).fill(-Infinity);
    for (let s = 0; s < states; s++) {
      const low = Math.max(0, s - reach);
      const high = Math.min(states - 1, s + reach);
      for (let t = low; t <= high; t++) {
        const value = best[t]! - bend * (s - t) * (s - t);
        if (value > next[s]!) {
          next[s] = value;
          from[(k - 1) * states + s] = t;
        }
      }
      next[s] = next[s]! + reward[row + s]!;
    }
    best = next;
  }
  const path = new Uint32Array(stations);
  let state = startState;
  for (let k = stations; k >= 1; k--) {
    path[(start + k) % stations] = state;
    state = from[(k - 1) * states + state]!;
  }
  return path;
}
