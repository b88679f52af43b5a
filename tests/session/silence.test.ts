/** Silence is never consent: a reading that waits is asked about again, and waits on. */
import { describe, expect, test } from 'vitest';
import { announce } from '../../src/language/announce.ts';
import type { Meaning } from '../../src/session/intent.ts';
import { MOST_ASKED_AGAIN, SILENCE, silenceAfter } from '../../src/session/silence.ts';
import {
  affirm,
  continue_,
  happened,
  next,
  procedureOf,
  reading,
  readings,
  refused,
  start,
  tell,
  tighten,
  type Play,
} from './play.ts';

const silence: Meaning = { kind: 'silence' };
const ring = (more: object = {}): Play => start(procedureOf([tighten('ring', more)]));
const said = (play: Play): readonly string[] => announce(play.state, happened(play));
const waiting = tell(ring(), reading('24'));

describe('silence after a read-back', () => {
  test('is an event of its own, and leaves the reading as it was', () => {
    const silent = tell(waiting, silence);
    expect(happened(silent)).toEqual([{ kind: 'timed out', of: 0 }]);
    expect(readings(silent)).toEqual(['1: 24 captured']);
  });
  test('never confirms, however long it lasts', () => {
    const silent = tell(waiting, ...Array.from({ length: 20 }, () => silence));
    expect(readings(silent)).toEqual(['1: 24 captured']);
    expect(readings(tell(silent, affirm))).toEqual(['1: 24 confirmed']);
  });
  test('has the reading read back again, the third time with another way to answer', () => {
    const asked = 'Stud one, two four. Is that correct?';
    expect(said(tell(waiting, silence))).toEqual([asked]);
    expect(said(tell(waiting, silence, silence))).toEqual([asked]);
    expect(said(tell(waiting, silence, silence, silence))).toEqual([asked, 'No answer. Tap affirm or negative.']);
  });
  test('is refused where nothing waits', () => {
    expect(refused(tell(ring(), silence))).toEqual({ code: 'nothing to confirm' });
    expect(refused(tell(waiting, affirm, silence))).toEqual({ code: 'nothing to confirm' });
    expect(refused(tell(waiting, { kind: 'stand by' }, silence))).toEqual({ code: 'standing by' });
  });
});

describe('the time after which silence is one', () => {
  const after = ({ state }: Play): number | null => silenceAfter(state);

  test('runs while a reading waits for its word, and begins anew with another value', () => {
    expect(after(waiting)).toBe(SILENCE * 1000);
    const silent = tell(waiting, ...Array.from({ length: MOST_ASKED_AGAIN }, () => silence));
    expect(after(silent)).toBeNull();
    expect(after(tell(silent, reading('25')))).toBe(SILENCE * 1000);
  });
  test('does not run where nothing waits, or while standing by', () => {
    expect(after(ring())).toBeNull();
    expect(after(tell(waiting, affirm))).toBeNull();
    const standing = tell(waiting, { kind: 'stand by' });
    expect(after(standing)).toBeNull();
    expect(after(tell(standing, continue_))).toBe(SILENCE * 1000);
  });
  test('does not run where going on confirms: the mechanic is silent at the next fastener', () => {
    const going = ring({ confirm: 'by going on' });
    expect(after(tell(going, reading('24')))).toBeNull();
    expect(after(tell(going, reading('27')))).toBe(SILENCE * 1000);
    expect(readings(tell(going, reading('24'), silence, next))).toEqual(['1: 24 confirmed']);
  });
});
