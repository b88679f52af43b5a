/** Whatever may come in while a step is worked, the likely more often. */
import fc from 'fast-check';
import type { Loop } from './loop.ts';
import type { Told } from './meeting.ts';
import { loadAgain, longPause, otherTalk, plain, question, timeOut, useless } from './phrases.ts';
import { click, correction, value, witness } from './values.ts';

const anything = fc.oneof(
  { weight: 10, arbitrary: value },
  { weight: 6, arbitrary: plain('affirm') },
  { weight: 5, arbitrary: plain('negative', 'disregard', 'next', 'back', 'say again') },
  { weight: 4, arbitrary: witness },
  { weight: 3, arbitrary: correction },
  { weight: 2, arbitrary: click },
  { weight: 2, arbitrary: plain('stand by', 'continue', 'continue', 'continue') },
  { weight: 2, arbitrary: timeOut },
  { weight: 2, arbitrary: loadAgain },
  { weight: 1, arbitrary: longPause },
  { weight: 1, arbitrary: fc.oneof(question, otherTalk, useless) },
);

/** Up to so many inputs, one after another. */
export const conversation = fc.commands<Told, Loop, boolean>([anything], { maxCommands: 30, size: 'max' });
