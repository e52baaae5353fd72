import { afterEach, expect, test, vi } from "vitest";

afterEach(() => {
  vi.useRealTimers();
  vi.unstubAllGlobals();
  vi.resetModules();
});

/** A browser that lets the page sound so long after it is asked; how many tones were begun is counted. */
async function ringAfter(ms: number): Promise<number> {
  vi.useFakeTimers();
  let tones = 0;
  const part = { connect: () => part, setValueAtTime() {}, linearRampToValueAtTime() {}, exponentialRampToValueAtTime() {} };
  vi.stubGlobal("AudioContext", class {
    state = "suspended";
    currentTime = 0;
    destination = part;
    async resume(): Promise<void> {
      await new Promise((allowed) => setTimeout(allowed, ms));
      this.state = "running";
    }
    createGain = () => ({ ...part, gain: part });
    createOscillator = () => ({ ...part, frequency: { value: 0 }, start: () => tones++, stop() {} });
  });
  const { ring } = await import("#app/state/step-sound.ts");
  const rung = ring();
  await vi.advanceTimersByTimeAsync(ms);
  await rung;
  return tones;
}

test("it rings where the browser lets it at once, and not when the page is touched an hour later", async () => {
  expect(await ringAfter(20)).toBe(2);
  vi.resetModules();
  expect(await ringAfter(3_600_000)).toBe(0);
});
