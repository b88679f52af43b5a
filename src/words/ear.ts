/** The state of ear and voice, always on screen, and what is said when the ear fails. */
import { said } from './said.ts';

const GO_ON = 'Go on by touch or keys.';

export const ear = said('ear', {
  elsewhere: '✕ Another window listens and speaks. Close it, then start here.',
  chooseModel: 'Choose a speech model',
  startListening: 'Start listening',
  mute: 'Mute',
  unmute: 'Unmute',
  voice: (why: string) => `Voice: ${why}`,
  unknownWords: (words: readonly string[]) =>
    `This speech model does not know: ${words.join(', ')}. Say it another way, or tap.`,
  off: '○ Not listening',
  listening: '● Listening',
  hearing: '● Hearing',
  hearingWords: (words: string) => `● Hearing: ${words}`,
  speaking: '◐ Speaking: “stop” hushes it',
  muted: '◐ Muted',
  failed: (sentence: string) => `✕ ${sentence}`,
  loadingKept: '… Loading the speech model from this device',
  unpacking: '… Unpacking the speech model',
  loading: (percent: number, megabytes: string) => `… Loading the speech model: ${percent} % of ${megabytes} MB`,
  lineBroken: (percent: number, megabytes: string) =>
    `… The connection broke at ${percent} % of ${megabytes} MB of the speech model; loading goes on there when it is back`,
  listeningAgain: 'Listening again.',
  heldBack: 'The browser holds the microphone back. Touch the screen once.',
  microphoneLost: `The microphone is lost. ${GO_ON}`,
  hearingFailed: `Hearing has failed. ${GO_ON}`,
});
