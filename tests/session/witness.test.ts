/** A second person reads each value as well, and reads it blind. */
import { describe, expect, test } from 'vitest';
import { announce } from '../../src/language/announce.ts';
import { prompt } from '../../src/language/prompt.ts';
import { situationOf } from '../../src/language/situation.ts';
import type { Meaning } from '../../src/session/intent.ts';
import { begin, fold } from '../../src/session/fold.ts';
import { describe as line } from '../../src/ui/describe.ts';
import { workView } from '../../src/ui/view.ts';
import { heard, meant, ring as studs, typed } from '../language/meant.ts';
import {
  affirm,
  click,
  correction,
  disregard,
  happened,
  indicating,
  kinds,
  negative,
  newtonMetres,
  next,
  procedureOf,
  reading,
  readings,
  refused,
  setting,
  start,
  tell,
  tighten,
  type Play,
} from './play.ts';
import { understand } from '../../src/language/understand.ts';

const witness = (value: string, fastener: number | null = null): Meaning => ({
  kind: 'witness',
  reading: { fastener, value },
});
const procedure = (tool: object = indicating) =>
  procedureOf([tighten('ring', { confirm: 'witness each' })], { tools: [tool] });
const ring = start(procedure());
const read = tell(ring, reading('24.5'));
const said = (play: Play): string => announce(play.state, happened(play)).join(' ');
const alone = (second: string | null): Play => ({
  ...ring,
  state: begin(procedure(), { mechanic: 'Ada', second }),
});

describe('the value of the mechanic', () => {
  test('is written down, and neither spoken nor shown', () => {
    expect(happened(read)).toMatchObject([{ kind: 'reading captured', reading: newtonMetres('24.5') }]);
    expect(said(read)).toBe('Stud one is read. Second person, say witness and the value.');
    expect(prompt(read.state).join(' ')).toBe(said(read));
    expect(workView(read.state)).toMatchObject({ pending: null, doubt: null, awaitsWitness: 1 });
    const [event] = read.events;
    expect(event && line(event, read.state)).toBe('Stud 1, pass 1: value taken, not shown before the witness has read');
  });
  test('gives nothing away where it is outside its window or in doubt', () => {
    const doubted: Meaning = {
      kind: 'reading',
      reading: { fastener: null, value: '42.5' },
      doubts: ['digits swapped'],
    };
    for (const play of [tell(ring, reading('30')), tell(ring, doubted)]) {
      expect(said(play)).toBe(said(read));
      expect(workView(play.state)).toMatchObject({ pending: null, doubt: null });
    }
  });
  test('is not spoken again at the silence', () => {
    const silent = tell(read, { kind: 'silence' });
    expect(said(silent)).toBe(said(read));
  });
  test('is not confirmed before the witness has read, whatever is said', () => {
    for (const meaning of [affirm, next, click(), reading('24.5'), reading('24.5', 3)])
      expect(refused(tell(read, meaning))).toEqual({ code: 'witness first', fastener: 1 });
  });
  test('can be taken back or said anew by its own words, and is kept from all again', () => {
    expect(readings(tell(read, disregard))).toEqual(['1: 24.5 disregarded']);
    expect(readings(tell(read, negative))).toEqual(['1: 24.5 rejected']);
    const anew = tell(read, correction('25'));
    expect(readings(anew)).toEqual(['1: 24.5 replaced', '1: 25 captured']);
    expect(said(anew)).toBe(said(read));
  });
});

describe('the witness', () => {
  const witnessed = tell(read, witness('24.5'));

  test('is the second person by name', () =>
    expect(happened(witnessed)).toEqual([
      { kind: 'witnessed', of: 0, reading: newtonMetres('24.5'), person: 'Second person' },
    ]));
  test('has both values read back, shown, and then confirmed', () => {
    expect(said(witnessed)).toBe('Stud one, two four point five, witness, two four point five. Is that correct?');
    expect(workView(witnessed.state)).toMatchObject({ awaitsWitness: null, pending: { fastener: 1 } });
    expect(refused(tell(witnessed, next))).toEqual({ code: 'confirm first', fastener: 1 });
    expect(kinds(tell(witnessed, affirm))).toEqual(['reading confirmed']);
  });
  test('agrees to one mark of the tool', () => {
    for (const value of ['24', '24.50', '25']) expect(kinds(tell(read, witness(value)))).toEqual(['witnessed']);
    for (const value of ['23.9', '25.1', '42.5', '2.45'])
      expect(kinds(tell(read, witness(value)))).toEqual(['witnessed', 'disputed']);
  });
  test('does not agree across a limit, however near: one of the two is out', () => {
    const edge = tell(ring, reading('26'));
    expect(kinds(tell(edge, witness('26.5')))).toEqual(['witnessed', 'disputed']);
    expect(kinds(tell(edge, witness('25.5')))).toEqual(['witnessed']);
  });
  test('who reads another value stops the work at this fastener, and both read again', () => {
    const disputed = tell(read, witness('26'));
    expect(readings(disputed)).toEqual(['1: 24.5 disputed']);
    expect(said(disputed)).toBe(
      'Stop. The two values of stud one differ. Both read again. Stud one, two four point five.',
    );
    expect(refused(tell(disputed, affirm))).toEqual({ code: 'nothing to confirm' });
    const again = tell(disputed, reading('25'), witness('25'), affirm);
    expect(readings(again)).toEqual(['1: 24.5 disputed', '1: 25 confirmed']);
  });
  test('reads the fastener that was read, once there is a value', () => {
    expect(refused(tell(read, witness('24.5', 3)))).toEqual({ code: 'out of order', offered: 3, expected: 1 });
    expect(kinds(tell(read, witness('24.5', 1)))).toEqual(['witnessed']);
    expect(refused(tell(ring, witness('24.5')))).toEqual({ code: 'nothing to witness' });
    expect(refused(tell(witnessed, witness('24.5')))).toEqual({ code: 'confirm first', fastener: 1 });
  });
  test('reads anew where the value is corrected after both were read back', () => {
    const corrected = tell(witnessed, correction('25'));
    expect(refused(tell(corrected, affirm))).toEqual({ code: 'witness first', fastener: 1 });
    expect(readings(tell(corrected, witness('25'), affirm))).toEqual(['1: 24.5 replaced', '1: 25 confirmed']);
  });
  test('reads what a setting tool was set to', () => {
    const clicked = tell(start(procedure(setting)), click());
    expect(kinds(tell(clicked, witness('24.5')))).toEqual(['witnessed']);
  });
  test.each([null, 'Ada', ' ada ', ''])('is never the mechanic, and not nobody: second person %j', (second) =>
    expect(refused(tell(alone(second), reading('24')))).toEqual({ code: 'no second person' }),
  );
  test('is told in the record with both values', () => {
    let state = begin(procedure(), { mechanic: 'Mechanic', second: 'Second person' });
    const lines = tell(read, witness('26')).events.map((event) => {
      state = fold(state, event);
      return line(event, state);
    });
    expect(lines.slice(1)).toEqual([
      'Witnessed by Second person: 26 N·m, against stud 1, pass 1, 24.5 N·m',
      'Disputed, both read again: stud 1, pass 1, 24.5 N·m',
    ]);
  });
});

describe('the word "witness"', () => {
  const waiting = tell(studs({ confirm: 'witness each' }), reading('24.5'));

  test('leads a value as it is said or typed', () => {
    expect(meant(waiting, 'witness two four point five')).toEqual(witness('24.5'));
    expect(meant(waiting, 'witness stud one at two four')).toEqual(witness('24', 1));
    expect(typed(waiting, 'witness 1 24.5')).toEqual(witness('24.5', 1));
  });
  test('means nothing where no witness is wanted', () => {
    expect(meant(studs(), 'witness two four')).toBeNull();
    expect(situationOf(studs().state).witness).toBeNull();
  });
  test('has its value asked again where it was not clear', () =>
    expect(understand(heard('witness two four', 0.6), situationOf(waiting.state))).toMatchObject({
      meaning: { kind: 'unclear', doubt: 'not sure' },
    }));
});
