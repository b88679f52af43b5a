/** Buttons for what can be said, each in its fixed place. */
import { said } from './said.ts';

export const buttons = said('buttons', {
  affirm: 'Affirm',
  negative: 'Negative',
  next: 'Next',
  back: 'Back',
  sayAgain: 'Say again',
  disregard: 'Disregard',
  turned: 'Turned',
  standBy: 'Stand by',
  reportDamage: 'Report damage',
  reportOverTorque: 'Report over torque',
  reportUnderTorque: 'Report under torque',
  reportNoTorque: 'Report no torque',
  leaveOpen: 'Leave open',
  handOver: 'Hand over',
  ask: 'Ask',
  whereAreWe: 'Where are we',
  remaining: 'Remaining',
  lastValues: 'Last values',
  explain: 'Explain',
  saySlowly: 'Say slowly',
});
