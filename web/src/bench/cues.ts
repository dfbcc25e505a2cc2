// What says "read now" besides the words on the screen: a sound, a buzz. Each can be switched off, and
// the words are always there as well.

const place = "keenfall.bench.cues";

export interface Cues {
  sound: boolean;
  buzz: boolean;
  tick: boolean;
}

export function keptCues(kept: Storage): Cues {
  const usual = { sound: true, buzz: true, tick: false };
  try {
    return { ...usual, ...JSON.parse(kept.getItem(place) ?? "{}") };
  } catch {
    return usual;
  }
}

export function keepCues(kept: Storage, cues: Cues): void {
  kept.setItem(place, JSON.stringify(cues));
}

let audio: AudioContext | undefined;

function tone(pitch: number, from: number, seconds: number): void {
  audio ??= new AudioContext();
  const sound = audio.createOscillator();
  const loudness = audio.createGain();
  sound.frequency.value = pitch;
  loudness.gain.setValueAtTime(0.25, audio.currentTime + from);
  loudness.gain.exponentialRampToValueAtTime(0.001, audio.currentTime + from + seconds);
  sound.connect(loudness).connect(audio.destination);
  sound.start(audio.currentTime + from);
  sound.stop(audio.currentTime + from + seconds);
}

export function tick({ tick: wanted }: Cues): void {
  if (wanted) tone(1200, 0, 0.05);
}

/** Two tones and a buzz: read now. */
export function readNow({ sound, buzz }: Cues): void {
  if (sound) {
    tone(660, 0, 0.25);
    tone(880, 0.28, 0.35);
  }
  if (buzz) navigator.vibrate?.([200, 100, 200]);
}

/** One long tone and a buzz: blunt enough, or at the cap. */
export function stopNow({ sound, buzz }: Cues): void {
  if (sound) tone(440, 0, 1.2);
  if (buzz) navigator.vibrate?.(800);
}
