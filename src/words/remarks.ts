/** What is missing in a procedure that is being written, wrong or worth a look. */
import { said } from './said.ts';

export const remarks = said('remarks', {
  title: 'What is missing or worth a look',
  kinds: { missing: 'To fill in', fault: 'Wrong', warning: 'Worth a look' },
  notReady: (faults: number) =>
    `${faults === 1 ? 'One thing is' : `${faults} things are`} missing or wrong before a job can begin with it.`,
  nothing: 'Nothing is missing, and nothing is worth a remark.',
  ready: (warnings: number) =>
    `A job can begin with it. ${warnings === 1 ? 'One thing is' : `${warnings} things are`} worth a look.`,

  /** Whether a fault of a file only says that nothing was filled in yet. */
  isMissing: (fault: string) => MISSING.test(fault),
  /** A fault of a file, for somebody who fills in a form: "missing, expected words in quotes" is "fill in words". */
  inForm: (fault: string) => {
    const plain = REWORDED.reduce((words, [pattern, by]) => words.replace(pattern, by), fault);
    return plain.replace(/^(?:missing|found nothing|found ""), expected (.*)$/u, 'fill in $1');
  },
});

/** How the loader of files says that something is missing. */
const MISSING = /^(?:missing|found nothing|found ""), expected/u;

/** How it names the notation of a file, and what stands for it in a form. */
const REWORDED: readonly (readonly [RegExp, string])[] = [
  [/such as \{ "value": "([^"]*)", "unit": "([^"]*)" \}/gu, 'such as $1 $2'],
  [/such as "([^"]*)"/gu, 'such as $1'],
  [/ \(a point, no exponent, no thousands mark\)/gu, ', with a point'],
  [/an object with the fields (\w+(?:, \w+)*)/gu, '$1'],
  [/a name in quotes/gu, 'a choice'],
  [/ in quotes/gu, ''],
];
