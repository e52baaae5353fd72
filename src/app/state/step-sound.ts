const key = "lastwise sound of steps";

export function keptSound(): boolean {
  try {
    return localStorage.getItem(key) === "on";
  } catch {
    return false;
  }
}

export function keepSound(on: boolean): void {
  try {
    localStorage.setItem(key, on ? "on" : "off");
  } catch {
    // Where the browser keeps nothing it is asked for again.
  }
}

let audio: AudioContext | undefined;

/** A ring that comes later than this after what it rings for would only puzzle. */
const lateMs = 3000;

/** Two short soft tones. A browser that lets no page sound before it was touched stays silent, also when it is touched later. */
export async function ring(): Promise<void> {
  try {
    audio ??= new AudioContext();
    const asked = performance.now();
    // Resuming waits for a touch for as long as it takes.
    if (audio.state !== "running") await audio.resume();
    if (audio.state !== "running" || performance.now() - asked > lateMs) return;
    for (const [begin, hertz] of [[0, 523], [0.28, 659]] as const) {
      const tone = audio.createOscillator();
      const loud = audio.createGain();
      const from = audio.currentTime + begin;
      tone.frequency.value = hertz;
      loud.gain.setValueAtTime(0, from);
      loud.gain.linearRampToValueAtTime(0.25, from + 0.02);
      loud.gain.exponentialRampToValueAtTime(0.001, from + 0.25);
      tone.connect(loud).connect(audio.destination);
      tone.start(from);
      tone.stop(from + 0.26);
    }
  } catch {
    // No sound here; the words on the page and in its title stay.
  }
}
