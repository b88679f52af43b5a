/** A second person reads each value as well, and reads it blind. */
import { describe, expect, test } from 'vitest';
import { announce } from '../../src/language/announce.ts';
import { prompt } from '../../src/language/prompt.ts';
import { situationOf } from '../../src/language/situation.ts';
import type { Meaning, ReadingDoubt } from '../../src/session/intent.ts';
import { begin, fold } from '../../src/session/fold.ts';
import { describe as line } from '../../src/ui/describe.ts';
import { toneFor } from '../../src/ui/earcons.ts';
import { workView } from '../../src/ui/view.ts';
import { heard, meant, ring as studs, typed } from '../language/meant.ts';
import {
  affirm,
  click,
  correction,
  disregard,
  doubted,
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
import { figuresIn } from './conversation/ears.ts';

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
    expect(event && line(event, read.state)).toBe('Stud 1, pass 1: value taken, not shown before both have read it');
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

describe('a value in doubt that both have read', () => {
  const DOUBTS = [
    ...(['not sure', 'between marks', 'sounds like another', 'out by ten'] as const),
    ...(['digits swapped', 'digit count', 'too soon'] as const),
  ];
  const both = (doubt: ReadingDoubt, value = '42.5'): Play => tell(ring, doubted(value, doubt), witness(value));

  test.each(DOUBTS)('is read again by both, and told by nothing until then: %s', (doubt) => {
    const play = both(doubt);
    const again: Meaning[] = [{ kind: 'say again' }, { kind: 'silence' }, affirm, next];
    for (const at of [play, ...again.map((meaning) => tell(play, meaning))]) {
      const shown = workView(at.state, at.events.at(-1)?.body);
      expect(figuresIn(`${said(at)} ${prompt(at.state).join(' ')} ${JSON.stringify(shown)}`)).not.toContain('42.5');
      expect(shown).toMatchObject({ pending: null, awaitsWitness: 1 });
    }
    expect(said(play)).toMatch(/^Stud one is in doubt\. .* Both read again, digit by digit\.$/);
    expect(toneFor(play.state, happened(play))).toBe('question');
  });
  test('asks for no word that would be refused, whether nobody answers or somebody asks why', () => {
    const silence: Meaning = { kind: 'silence' };
    const why: Meaning = { kind: 'question', question: { about: 'why' } };
    for (const asked of [tell(both('digits swapped'), silence, silence, silence), tell(both('digits swapped'), why)]) {
      expect(said(asked)).toMatch(/again/);
      expect(said(asked)).not.toMatch(/affirm/);
    }
  });
  test.each(DOUBTS)('is confirmed by no word before: %s', (doubt) => {
    for (const meaning of [affirm, next, witness('42.5')])
      expect(refused(tell(both(doubt), meaning))).toEqual({ code: 'in doubt', fastener: 1 });
  });
  test.each(DOUBTS)('is read back once both have read the same again: %s', (doubt) => {
    const again = tell(both(doubt), doubted('42.5', doubt));
    expect(said(again)).toBe(said(read));
    const witnessed = tell(again, witness('42.5'));
    expect(said(witnessed)).toMatch(
      /^Stud one, four two point five, witness, four two point five\..* Is that correct\?$/,
    );
    expect(readings(tell(witnessed, affirm))).toEqual(['1: 42.5 replaced', '1: 42.5 confirmed']);
  });
  test('is another one that is in no doubt, or is taken back', () => {
    const play = both('digits swapped');
    expect(readings(tell(play, reading('24.5'), witness('24.5'), affirm))).toEqual([
      '1: 42.5 replaced',
      '1: 24.5 confirmed',
    ]);
    expect(readings(tell(play, negative))).toEqual(['1: 42.5 rejected']);
  });
  test('gives nothing away by what is refused before the second person has read', () => {
    const place: Meaning = { kind: 'question', question: { about: 'place' } };
    const codes = [reading('24.5'), doubted('42.5', 'sounds like another')].map((first) =>
      refused(tell(ring, first, place)),
    );
    expect(codes).toEqual([
      { code: 'witness first', fastener: 1 },
      { code: 'witness first', fastener: 1 },
    ]);
  });
});

describe('a correction of a value that counts', () => {
  const counts = tell(read, witness('24.5'), affirm);

  test('that the second person reads otherwise leaves the value that counts, which is said and shown', () => {
    const disputed = tell(counts, correction('25'), witness('26'));
    expect(readings(disputed)).toEqual(['1: 24.5 confirmed', '1: 25 disputed']);
    expect(said(disputed)).toBe(
      'Stop. The two values of stud one differ. Stud one stands at two four point five, as before. ' +
        'If it is wrong, say correction and the right value. Stud three, two four point five.',
    );
    expect(workView(disputed.state, disputed.events.at(-1)?.body).undone).toBe('Stud 1 stands at 24.5 N·m, as before.');
  });
  test('can be said again then, and both read', () => {
    const again = tell(counts, correction('25'), witness('26'), correction('25.5'), witness('25.5'), affirm);
    expect(readings(again)).toEqual(['1: 24.5 replaced', '1: 25 disputed', '1: 25.5 confirmed']);
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
