/**
 * The alarm: two tones, made by the browser, no file. It sounds for a cause that nobody on this screen has silenced; a
 * cause that was shown before makes no new sound.
 */
import type { Cause } from '@hoopwright/wire/day';
import { create } from 'zustand';

export interface Sound {
  /** Heard on this screen, so that it may be trusted here. */
  readonly armed: boolean;
  readonly sounding: boolean;
  /** Limits that were silenced here. */
  readonly silenced: ReadonlySet<string>;
}

export const useSound = create<Sound>(() => ({ armed: false, sounding: false, silenced: new Set() }));

const keyOf = ({ limit, state }: Pick<Cause, 'limit' | 'state'>): string => `${state}: ${limit}`;

/** Causes for which it must sound now. */
export const loudCauses = (causes: readonly Cause[], silenced: ReadonlySet<string>): readonly Cause[] =>
  causes.filter((cause) => cause.acknowledged === undefined && !silenced.has(keyOf(cause)));

/** Hz and s of each tone; two tones that a workshop does not make. Our choice, no source. */
const TONES = [880, 660] as const;
const BEAT = 0.35;
const LOUD = 0.4;

let context: AudioContext | undefined;
let alarm: { readonly stop: () => void } | undefined;

/** Lets the two tones be heard. Must be called from a press: browsers keep pages silent until then. */
export async function tryTones(): Promise<void> {
  context ??= new AudioContext();
  await context.resume();
  const stop = tones(context);
  setTimeout(stop, 4 * BEAT * 1000);
}

export const heard = (yes: boolean): void => useSound.setState({ armed: yes });

/** Begins or ends the alarm as the causes want it. */
export function soundFor(causes: readonly Cause[]): void {
  const loud = loudCauses(causes, useSound.getState().silenced).length > 0;
  if (useSound.getState().sounding !== loud) useSound.setState({ sounding: loud });
  if (loud && alarm === undefined && context?.state === 'running') alarm = { stop: tones(context) };
  if (!loud) {
    alarm?.stop();
    alarm = undefined;
  }
}

/** What is sounding now stays silent on this screen. */
export function silence(causes: readonly Cause[]): void {
  const { silenced } = useSound.getState();
  useSound.setState({ silenced: new Set([...silenced, ...causes.map(keyOf)]) });
  soundFor(causes);
}

/** Sounds the tones in turn until the answer is called. */
function tones(audio: AudioContext): () => void {
  const oscillator = audio.createOscillator();
  const gain = audio.createGain();
  gain.gain.value = LOUD;
  oscillator.type = 'triangle';
  oscillator.connect(gain).connect(audio.destination);
  let n = 0;
  const next = (): void => {
    oscillator.frequency.setValueAtTime(TONES[n++ % 2], audio.currentTime);
  };
  next();
  const timer = setInterval(next, BEAT * 1000);
  oscillator.start();
  return () => {
    clearInterval(timer);
    oscillator.stop();
    oscillator.disconnect();
  };
}
