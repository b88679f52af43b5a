/** What the second person's window shows: a pure function of the record, blind to what the mechanic read. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Meaning } from '../../src/session/intent.ts';
import { type Reading, type SessionState } from '../../src/session/state.ts';
import { awaitsWitness } from '../../src/session/witness.ts';
import { secondView } from '../../src/ui/second-view.ts';
import { meaning } from '../session/anything.ts';
import {
  affirm,
  correction,
  disregard,
  doubted,
  negative,
  next,
  procedureOf,
  reading,
  start,
  step,
  tell,
  tighten,
  type Play,
} from '../session/play.ts';

const shown = ({ state, events }: Play) => secondView(state, events);
const witness = (value: string): Meaning => ({ kind: 'witness', reading: { fastener: null, value } });
const says = (agrees: boolean): Meaning => ({ kind: 'witness says', agrees });
const second = (name: string | null): Meaning => ({ kind: 'second person', name });
const ring = start(procedureOf([tighten('ring', { confirm: 'witness each' })]));

describe('blindness', () => {
  const text = (play: Play): string => JSON.stringify(shown(play));

  /** A record in which every value that the second person may not know yet is another one. */
  function withOtherValues(state: SessionState, value: string): SessionState {
    const isHidden = (each: Reading): boolean =>
      ['disputed', 'rejected', 'replaced', 'disregarded'].includes(each.status) ||
      (each.status === 'captured' && awaitsWitness(state, each));
    return {
      ...state,
      readings: state.readings.map((each) =>
        isHidden(each)
          ? {
              ...each,
              reading: { ...each.reading, value },
              verdict: 'over',
              doubts: ['digits swapped', 'off the scale'],
            }
          : each,
      ),
    };
  }

  /** Values near one another and far apart, answers to them, and now and then anything at all. */
  const value = fc.constantFrom('24', '24.5', '25', '25.5', '30', '42.5');
  const move = fc.oneof(
    { weight: 4, arbitrary: value.map((value) => reading(value)) },
    { weight: 3, arbitrary: value.map(witness) },
    { weight: 3, arbitrary: fc.constantFrom(affirm, negative, disregard) },
    { weight: 2, arbitrary: value.map((value) => correction(value)) },
    { weight: 1, arbitrary: meaning },
  );
  const play = fc.array(move, { maxLength: 20 }).map((moves) => tell(ring, ...moves));

  test('nothing that is shown depends on a value that is not settled between the two', () => {
    let hidden = 0;
    fc.assert(
      fc.property(play, fc.nat(9999), ({ state, events }, tenths) => {
        const other = withOtherValues(state, `${tenths / 10}`);
        if (other.readings.some((each, i) => each !== state.readings[i])) hidden++;
        expect(secondView(other, events)).toEqual(secondView(state, events));
      }),
    );
    // Without any such value, nothing was looked at.
    expect(hidden).toBeGreaterThan(20);
  });
  test('a value is shown when both have read and agree, and not before', () => {
    const read = tell(ring, reading('25.5'));
    expect(text(read)).not.toContain('25.5');
    expect(text(tell(read, witness('25')))).toContain('The two agree: 25.5 and 25 N·m');
    expect(text(tell(read, witness('25'), affirm))).toContain('25.5');
  });
  test('what the tool is to show is not told either', () => {
    expect(text(tell(ring, reading('25.5')))).not.toContain('24.5');
  });
  test('a value that was disputed, or said anew, stays out of sight: the same tool is read again', () => {
    const play = tell(ring, reading('25.5'), witness('23'), reading('24.5'), correction('24'));
    expect(shown(play).readings).toMatchObject([
      { place: 'Stud 1, pass 1', value: null, status: 'not confirmed yet' },
      { value: null, status: 'replaced' },
      { value: null, status: 'disputed', who: 'Mechanic; witness Second person' },
    ]);
  });
});

describe('what is wanted', () => {
  test('is a value once the mechanic has read, in the unit of the tool', () => {
    expect(shown(ring).task).toEqual({ kind: 'wait', why: 'Nothing is asked of you now.' });
    expect(shown(ring).at).toEqual({ label: 'Stud', fastener: 1, round: 'Pass 1 of 1' });
    expect(shown(tell(ring, reading('24'))).task).toEqual({ kind: 'read', of: 0, fastener: 1, unit: 'N·m' });
    expect(shown(tell(ring, reading('24'), witness('24'))).task.kind).toBe('wait');
  });
  test('is nothing yet, where what both have read is in doubt: the mechanic reads again first', () => {
    const play = tell(ring, doubted('42.5', 'digits swapped'), witness('42.5'));
    expect(shown(play)).toMatchObject({
      task: { kind: 'wait', why: 'The mechanic reads again first.' },
      finding: null,
    });
    expect(JSON.stringify(shown(play))).not.toContain('42.5');
    expect(shown(tell(play, reading('24'))).task.kind).toBe('read');
  });
  test('is their word where a step is to be looked at', () => {
    const look = start(procedureOf([step('look', 'witness', { what: 'both caps' }), step('end', 'do')]));
    expect(shown(look).task).toEqual({ kind: 'look', what: 'Both caps', text: 'Text of look.' });
    expect(shown(tell(look, says(true))).task.kind).toBe('wait');
  });
  test('is that somebody joins, where nobody may witness', () => {
    const gone = tell(ring, reading('24'), second(null));
    expect(shown(gone)).toMatchObject({
      second: null,
      task: { kind: 'wait', why: 'Stud 1, pass 1 needs a witness. Join under your name.' },
    });
    expect(shown(tell(gone, second('Mechanic'))).second).toBeNull();
    expect(shown(tell(gone, second('Ada')))).toMatchObject({ second: 'Ada', task: { kind: 'read' } });
  });
  test('is nothing while something else comes first', () => {
    const steps = [
      step('lift', 'witness', { what: 'it', hazards: [{ signal: 'warning', consequence: 'person', text: 'Heavy.' }] }),
    ];
    expect(shown(start(procedureOf(steps))).task).toEqual({
      kind: 'wait',
      why: 'The mechanic acknowledges a warning first: Heavy.',
    });
    expect(shown(tell(ring, reading('24'), { kind: 'stand by' })).task).toEqual({
      kind: 'wait',
      why: 'The work stands by.',
    });
    const reported = tell(ring, { kind: 'report', what: 'damage' });
    expect(shown(reported).task).toEqual({
      kind: 'wait',
      why: 'The mechanic gives the reason for a deviation. Stud 1, pass 1: damage.',
    });
    expect(shown(reported).openPoints).toEqual(['ring. Stud 1, pass 1: damage']);
  });
});

describe('what the two found', () => {
  test('a dispute stops the pass until the mechanic reads again', () => {
    const disputed = tell(ring, reading('25.5'), witness('23'));
    expect(shown(disputed)).toMatchObject({
      finding: { kind: 'dispute', headline: 'Dispute: the pass stops here' },
      task: { kind: 'wait', why: 'The mechanic reads again first.' },
    });
    expect(shown(disputed).at?.fastener).toBe(1);
    expect(shown(tell(disputed, reading('24'))).finding).toBeNull();
  });
  test('a word that does not agree stands until they look again and agree', () => {
    const done = tell(start(procedureOf([step('fit', 'do', { witness: true }), step('end', 'do')])), next);
    expect(shown(done).task).toEqual({ kind: 'look', what: 'Fit', text: 'Text of fit.' });
    const not = tell(done, says(false));
    expect(shown(not)).toMatchObject({ task: { kind: 'wait' }, finding: { kind: 'dispute' } });
    expect(shown(tell(not, next, says(true)))).toMatchObject({ finding: null, step: { title: 'end' } });
  });
});
