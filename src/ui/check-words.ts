import { verdictOn, type Fitness, type Verdict } from '../hearing/fitness.ts';
import { strictest, surenessFor, USUAL, type Sureness } from '../language/sureness.ts';
import { pronunciationsShown } from '../language/voice-trial.ts';
import type { People } from '../session/event.ts';
import { voiceOf, type Voice } from '../storage/voices.ts';
import { microphone } from '../words/microphone.ts';
import { signed } from './heard-sound.ts';

export const verdictOf = ({ trials, ...measured }: Voice): Verdict =>
  verdictOn({ ...measured, asked: trials.length, right: trials.filter(({ isRight }) => isRight).length });

/** After so long the room, the microphone and the voice are others: about one shift. */
const KEEPS_MS = 12 * 3_600_000;

export const isOld = ({ checkedAt }: Voice, utc: string): boolean => Date.parse(utc) - Date.parse(checkedAt) > KEEPS_MS;

/** Whether this person's last check forbids to start by voice, and still says something about today. */
export const forbidsVoice = (voice: Voice | null, utc: string): boolean =>
  voice !== null && !isOld(voice, utc) && verdictOf(voice).fitness === 'do not start by voice';

/**
 * How surely these people are to be heard, by their last checks. It is not known who of them speaks, so it is what
 * satisfies all; whoever has no check is to be heard as anybody. An old check may still ask for more, never for less.
 * @param utc now
 */
export const surenessOf = (voices: readonly Voice[], { mechanic, second }: People, utc: string): Sureness =>
  strictest([mechanic, second].flatMap((name) => (name === null ? [] : [surenessNow(voiceOf(voices, name), utc)])));

/** How any of these people pronounced figures at their check. It costs the others nothing. */
export const pronunciationsOf = (voices: readonly Voice[], { mechanic, second }: People): readonly string[] =>
  [mechanic, second].flatMap((name) => pronunciationsShown((name && voiceOf(voices, name)?.trials) || []));

function surenessNow(voice: Voice | null, utc: string): Sureness {
  if (voice === null) return USUAL;
  const shown = surenessFor(voice.trials);
  return isOld(voice, utc) ? strictest([USUAL, shown]) : shown;
}

/** Stands before the words for it. */
export const FITNESS_SIGN: Readonly<Record<Fitness, string>> = {
  fit: '✓',
  'fit with care': '△',
  'do not start by voice': '▲',
};

/** "Background −52 dB. Voice 24 dB over it. 4 of 5 heard right." */
export function measuredInWords({ noise, speech, trials }: Voice): string {
  const right = trials.filter(({ isRight }) => isRight).length;
  return [
    noise === null ? microphone.noSound : microphone.backgroundWas(signed(noise)),
    ...(noise === null || speech === null ? [] : [microphone.voiceWas(signed(speech - noise))]),
    ...(trials.length > 0 ? [microphone.heardRight(right, trials.length)] : []),
  ].join(' ');
}
