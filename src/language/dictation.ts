/** What may be somebody's reason, in words of their own. */
import { NOT_ANSWERS } from './decoys.ts';
import { NUMBER_WORDS } from './numbers/index.ts';
import {
  AFFIRM,
  BACK,
  CONTINUE,
  HAND_OVER,
  HELD,
  HELP,
  LEAVE_OPEN,
  NEGATIVE,
  NEXT,
  REPORTS,
  SET_DOWN,
  TURNED,
  WITNESS_SAYS,
} from './sayings.ts';

/** Words that go on with the work elsewhere: alone they are meant for that, and are no reason. */
const COMMANDS: ReadonlySet<string> = new Set([
  ...NOT_ANSWERS,
  ...[
    AFFIRM,
    NEGATIVE,
    NEXT,
    TURNED,
    BACK,
    CONTINUE,
    WITNESS_SAYS,
    HAND_OVER,
    LEAVE_OPEN,
    HELD,
    HELP,
    SET_DOWN,
    ...Object.values(REPORTS),
  ]
    .flat()
    .map(({ words }) => words),
]);
const NUMBERS: ReadonlySet<string> = new Set(NUMBER_WORDS);

/** Whether a whole utterance can be a reason: a command or a value alone was said for something else. */
export const isReason = (text: string): boolean =>
  text !== '' && !COMMANDS.has(text) && !text.split(' ').every((word) => NUMBERS.has(word) || /^[\d.]+$/.test(word));
