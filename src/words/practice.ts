/** Practice: a record that nobody takes for work, and the small job of it. */
import { said } from './said.ts';

export const practice = said('practice', {
  /** Stands wherever a practice record is shown, and in the record itself. */
  noWork: 'Practice: no work was done.',
  /** The mechanic who gave no name. */
  nobody: 'Practice',
  title: 'Practice, no work',
  source: 'Practice; no manual',
  noRevision: 'none',
  plate: 'Imagined plate',
  wrench: 'Imagined wrench, 5 to 60 N·m',
  pattern: 'Imagined plate, one bolt',
  pass: 'practice',
  goOn: {
    title: 'Say “next”',
    text: 'This is practice: leave the tools where they are. Wait until the voice is silent. Then say “next”.',
    say: 'Leave the tools where they are. Say: next.',
  },
  reading: {
    /** On the screen for as long as the step lasts: it says what to say. */
    title: 'Say “one two”. When it is read back, say “affirm”, or “negative” where it was misheard',
    text: 'A bolt is called with its value. Say what a wrench would show, digit by digit: “one two”. It is read back: say “affirm” where it was heard right, “negative” where not.',
    say: 'Say a reading: one two. When it is read back, say: affirm.',
  },
});
