/** Seeded numbers for tests: even in 0 … 1 (Park and Miller's generator) and normal (Box and Muller). */
export function seeded(seed: number): { even(): number; normal(): number } {
  let s = (seed * 48271 + 12345) % 2147483647;
  const even = (): number => (s = (s * 48271) % 2147483647) / 2147483647;
  return { even, normal: () => Math.sqrt(-2 * Math.log(even() + 1e-12)) * Math.cos(2 * Math.PI * even()) };
}
