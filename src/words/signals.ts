/** How fast the voice speaks, and the short signals before answers. */
import { said } from './said.ts';

export const signals = said('signals', {
  voiceAndSignals: 'Voice and signals',
  speed: 'How fast the voice speaks',
  speeds: { slower: 'slower', normal: 'as people speak', faster: 'faster' },
  whatTheyAre:
    'A short signal before each answer, louder in a louder room. What it tells stands on the screen as well.',
  heard: 'Heard',
  logged: 'Logged',
  question: 'Question',
  stop: 'Stop',
});
