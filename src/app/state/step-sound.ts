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

/** Two short soft tones. A browser that lets no page sound before it was touched stays silent until then. */
export function ring(): void {
  try {
    audio ??= new AudioContext();
    void audio.resume();
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
