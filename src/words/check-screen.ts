/** The microphone check, while it runs and when it is over. */
import { said } from './said.ts';

export const checkScreen = said('checkScreen', {
  title: 'Microphone check',
  whatComes: 'Two seconds of silence, then five phrases to say. It takes half a minute.',
  beSilent: 'Be silent',
  sayAfterVoice: 'When the voice has finished, say:',
  again: 'Check again',
  begin: 'Begin the check',
  earNotOpen: '▲ The microphone did not open',
  whyAbove: 'The line above says why. Pedal, keys and touch work without it.',
  verdict: (words: string) => `${words}.`,
  startsClosed: 'The job starts muted. Pedal, keys and touch do all of it; “Unmute” lets it listen.',
  heard: (words: string) => `heard: ${words}`,
  notHeard: 'not heard',
});
