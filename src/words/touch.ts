/** Gloved touch: what a contact was taken for. */
import { said } from './said.ts';

export const touch = said('touch', {
  nothingYet: '–',
  rejected: {
    palm: 'Too wide: a palm or a forearm. Not taken.',
    resting: 'Rested too long. Not taken.',
    'two at once': 'Two contacts at once. Not taken.',
    'slid too far': 'Slid too far for a press, not far enough for a swipe. Not taken.',
    'taken by the system': 'The system took this touch for itself. Not taken.',
  },
  taken: (contact: string, percentSure: number) => `${contact}, ${percentSure} % sure`,
  unsure: (contact: string, percentSure: number) => `${contact}? ${percentSure} % sure: not taken. Once more.`,
});
