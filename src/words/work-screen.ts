/** The screen of the work itself, around its panel. */
import { said } from './said.ts';

export const workScreen = said('workScreen', {
  earClosedByCheck: 'The microphone check: do not start by voice here.',
  mutedAsLeft: 'You left it muted: it hears nothing until you unmute it.',
  practice: 'Practice, no work',
  leave: 'Leave (the session stays)',
  replay: 'Replay',
  microphoneCheck: 'Microphone check',
  teach: 'Pedals, gloves, gestures',
  /** The record itself is written then; the missing seal stands beside it as well. */
  notSealed: 'The record could not be sealed on this device. That is tried again whenever it is opened.',
});
