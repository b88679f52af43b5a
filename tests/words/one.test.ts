/** One of a thing, and what begins with a vowel, are said as in English. */
import { expect, test } from 'vitest';
import { editorFiles } from '../../src/words/editor-files.ts';
import { expected } from '../../src/words/expected.ts';
import { quantities } from '../../src/words/quantities.ts';
import { startScreen } from '../../src/words/start-screen.ts';
import { timeLine } from '../../src/words/time-line.ts';
import { wrench } from '../../src/words/wrench.ts';

test.each([
  [editorFiles.differences(0), 'Nothing differs.'],
  [editorFiles.differences(1), '1 difference:'],
  [editorFiles.differences(2), '2 differences:'],
  [editorFiles.table.taken(1, 'places.csv'), '1 fastener was taken from places.csv.'],
  [editorFiles.table.decimalCommas(1), '1 decimal comma was read as a point: look at the drawing.'],
  [startScreen.steps(1), '1 step'],
  [timeLine.setBack(1), 'The clock was set back once.'],
  [timeLine.setBack(2), 'The clock was set back 2 times.'],
  [timeLine.summary('8:00', '9:00', 1, 1), 'Time line from 8:00 to 9:00, 1 entry, 1 step done.'],
  [quantities.notCompared('angle'), 'An angle that is no number cannot be compared.'],
  [quantities.notCompared('torque'), 'A torque that is no number cannot be compared.'],
  [expected.aboveZero('angle'), 'expected an angle above zero'],
  [expected.aboveZero('mass'), 'expected a mass above zero'],
  [wrench.unknownError('setting', 'G'), 'A setting tool of class "G" has no known error; state its maximum error.'],
])('“%s”', (words, said) => expect(words).toBe(said));
