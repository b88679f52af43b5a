import { describe, expect, test } from 'vitest';
import {
  affirm,
  answer,
  click,
  correction,
  procedureOf,
  reading,
  setting,
  start,
  step,
  tell,
  tighten,
  torquePass,
  window,
} from '../session/play.ts';
import { meant, several, otherUnit, ringOf, ring, outcomes } from './meant.ts';

describe('a correction', () => {
  const other = { ...setting, id: 'small', type: 'indicating', range: window('1', '10') };
  const small = { id: 'small-ring', name: 'Small ring', fastener: 'bolt', layout: { shape: 'ring', count: 2 } };
  const patterns = [ringOf(10), { ...small, order: { kind: 'circular' } }];
  const tools = [{ ...setting, type: 'indicating' }, other];
  const steps = [
    tighten('first', { pattern: 'small-ring', tool: 'small', passes: [torquePass('6', '5', '7')] }),
    tighten('second', { pattern: 'ring' }),
    step('clean', 'check', { outcomes }),
  ];
  const second = tell(start(procedureOf(steps, { patterns, tools })), reading('6'), affirm, reading('6'), affirm);

  test.each([
    ['correction two four point five', correction('24.5')],
    ['correction stud one at two four', correction('24', 1)],
    ['correction one at two four newton metres', correction('24', 1)],
  ])('of a reading that was read back: "%s"', (text, meaning) =>
    expect(meant(tell(ring(), reading('24')), text)).toEqual(meaning),
  );
  test('is about the last reading, on the scale and among the fasteners of that reading', () => {
    // "two five": on this scale from 1 to 10 it is bolt two at 5; 25 would be on the scale of the step under way.
    expect(meant(second, 'correction two five')).toEqual(correction('5', 2));
    expect(meant(second, 'correction bolt two at five')).toEqual(correction('5', 2));
  });
  test('is possible at a check, where nothing else is read', () => {
    const checking = start(procedureOf([tighten('ring'), step('inspect', 'check', { outcomes })]));
    const there = tell(checking, ...[1, 2, 3].flatMap(() => [reading('24'), affirm]));
    expect(meant(there, 'correction two four point five')).toEqual(correction('24.5'));
    expect(meant(there, 'reuse')).toEqual(answer('reuse'));
  });
  test('is the one value possible after the step; a value without the word is heard too, to be refused aloud', () => {
    const there = tell(
      start(procedureOf([tighten('ring'), step('clean', 'do')])),
      ...[1, 2, 3].flatMap(() => [reading('24'), affirm]),
    );
    expect(meant(there, 'correction two four point five')).toEqual(correction('24.5'));
    expect(meant(there, 'two four point five')).toEqual(reading('24.5'));
  });
  test('is nothing where no reading was taken', () => expect(meant(ring(), 'correction two four')).toBeNull());
  test('that is unclear is asked about, and so is another unit', () => {
    const pending = tell(ring(), reading('24'));
    expect(meant(pending, 'correction one five')).toEqual(several([null, '15'], [1, '5']));
    expect(meant(pending, 'correction one eight foot pounds')).toEqual(otherUnit);
  });
});

describe('a click', () => {
  const play = ring({}, { tools: [setting] });
  test.each([
    ['click', click()],
    ['four click', click(4)],
    ['stud four click', click(4)],
    ['number one zero click', click(10)],
  ])('of a setting tool: "%s"', (text, meaning) => expect(meant(play, text)).toEqual(meaning));
  test.each(['click four', 'click click', 'four point five click', 'correction click', 'four click newton metres'])(
    'is a whole utterance or none: "%s"',
    (text) => expect(meant(play, text)).toBeNull(),
  );
  test('wants to be sure: it is acted on at once', () => expect(meant(play, 'four click', 0.84)).toBeNull());
  test('is no word of an indicating tool', () => expect(meant(ring(), 'four click')).toBeNull());
});
