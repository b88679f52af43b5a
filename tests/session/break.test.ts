/** After a long break nothing is gone on with before somebody has said that all is as it was left. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { isBack, LONG_BREAK, pauseBetween } from '../../src/session/break.ts';
import type { EventBody } from '../../src/session/event.ts';
import { fold } from '../../src/session/fold.ts';
import { currentCall, pendingReading } from '../../src/session/state.ts';
import {
  affirm,
  continue_,
  eventOf,
  happened,
  kinds,
  negative,
  next,
  procedureOf,
  reading,
  readings,
  refused,
  start,
  step,
  tell,
  tighten,
  torquePass,
  type Play,
} from './play.ts';

const standBy = { kind: 'stand by' } as const;
const ring = (more: object = {}): Play => tell(start(procedureOf([tighten('ring', more), step('clean', 'do')])));

/** The session gone on with, or opened again, this many minutes after the last event. */
const after = (play: Play, minutes: number, kind: 'continued' | 'reopened' = 'continued'): Play =>
  later(play, minutes, { kind });

function later(play: Play, minutes: number, body: EventBody): Play {
  const last = play.events.at(-1);
  const event = eventOf(body, play.events.length);
  const utc = new Date(Date.parse(last?.at.utc ?? event.at.utc) + minutes * 60_000).toISOString();
  const back = { ...event, at: { ...event.at, utc } };
  return { ...play, state: fold(play.state, back), events: [...play.events, back] };
}

const [captured] = happened(tell(ring(), reading('24')));
if (captured?.kind !== 'reading captured') throw new Error('Nothing was captured.');
const happenedReading = captured;

describe('a break', () => {
  const begun = tell(ring(), reading('24'), affirm);

  test('of less than the limit is not asked about', () =>
    expect(after(tell(begun, standBy), LONG_BREAK - 1).state.breakOf).toBeNull());
  test.each(['continued', 'reopened'] as const)('that is long is asked about when work is %s', (kind) => {
    const back = after(kind === 'continued' ? tell(begun, standBy) : begun, 45, kind);
    expect(back.state.breakOf).toBe(45 * 60_000);
    for (const meaning of [next, reading('24'), { kind: 'silence' } as const])
      expect(refused(tell(back, meaning))).toEqual({ code: 'break first' });
    expect(kinds(tell(back, { kind: 'question', question: { about: 'place' } }))).toEqual(['asked']);
  });
  test('in which a weight was held is still asked about when that is set down', () => {
    const carry = step('carry', 'hold', { calls: ['Off', 'Down'] });
    const held = tell(start(procedureOf([carry, step('rest', 'do')])), { kind: 'held' });
    const down = tell(after(held, 45, 'reopened'), next, { kind: 'set down' });
    expect(kinds(down)).toContain('step done');
    expect(refused(tell(down, next))).toEqual({ code: 'break first' });
    expect(kinds(tell(down, affirm, next))).toContain('step done');
  });
  test('is not made shorter by a second person who joins meanwhile', () => {
    const joined = later(tell(begun, standBy), 29, { kind: 'second person joined', name: 'Third person' });
    expect(after(joined, 2).state.breakOf).toBe(31 * 60_000);
  });
  test('is noticed at a fastener with the page open all the while, and nowhere else', () => {
    const minutesLater = (minutes: number): string =>
      new Date(Date.parse(begun.state.lastAt ?? '') + minutes * 60_000).toISOString();
    expect(isBack(begun.state, minutesLater(LONG_BREAK - 1))).toBe(false);
    expect(isBack(begun.state, minutesLater(LONG_BREAK))).toBe(true);
    expect(isBack(tell(begun, standBy).state, minutesLater(LONG_BREAK))).toBe(false);
    const draining = tell(start(procedureOf([step('lift', 'do'), step('drain', 'do')])), next);
    expect(isBack(draining.state, minutesLater(24 * 60))).toBe(false);
  });
  test('is over once work goes on, in records from before it was asked about', () => {
    const back = after(begun, 45, 'reopened');
    const captured = eventOf({ ...happenedReading, fastener: 3 }, back.events.length);
    expect(fold(back.state, captured).breakOf).toBeNull();
  });
  test('is over once all is as it was left', () => {
    const on = tell(after(tell(begun, standBy), 45), affirm);
    expect(kinds(on)).toEqual(['break accepted']);
    expect(currentCall(on.state)?.fastener).toBe(3);
    expect(readings(on)).toEqual(['1: 24 confirmed']);
  });
  test('goes on being one where all is not as it was left', () => {
    const not = tell(after(tell(begun, standBy), 45), negative);
    expect(kinds(not)).toEqual(['stood by']);
    expect(tell(not, continue_).state.breakOf).toBe(45 * 60_000);
  });
  test('keeps a reading that waits, and asks about it afterwards', () => {
    const back = tell(after(tell(ring(), reading('24'), standBy), 45), affirm);
    expect(pendingReading(back.state)?.reading.value).toBe('24');
  });
  test('of two openings without work between them is one break', () =>
    expect(after(after(begun, 20, 'reopened'), 20, 'reopened').state.breakOf).toBe(40 * 60_000));
  test('is not asked about where it is unknown: a clock set back tells nothing', () =>
    fc.assert(
      fc.property(fc.date({ noInvalidDate: true }), fc.nat(), (date, ms) => {
        const later = new Date(Math.min(date.getTime() + ms, 8.64e15)).toISOString();
        expect(pauseBetween(later, date.toISOString())).toBe(0);
        expect(pauseBetween(null, later)).toBe(0);
        expect(pauseBetween(date.toISOString(), later)).toBe(Date.parse(later) - date.getTime());
      }),
    ));
});

describe('a pass that the procedure has begun again after a break', () => {
  const passes = [torquePass('12', '11', '13'), torquePass('24.5', '23', '26')];
  const first = [1, 2, 3].flatMap(() => [reading('12'), affirm]);
  const play = tell(ring({ passes, restartPassAfterMinutes: 10 }), ...first, reading('24'), affirm, standBy);

  test('is asked about after that long, though the break is short', () =>
    expect(after(play, 11).state.breakOf).toBe(11 * 60_000));
  test('is worked again from its first fastener; the pass before it stands', () => {
    const on = tell(after(play, 11), affirm);
    expect(kinds(on)).toEqual(['break accepted', 'pass restarted']);
    expect(currentCall(on.state)).toMatchObject({ fastener: 1, pass: { index: 2 } });
    expect(readings(on)).toEqual(['1: 12 confirmed', '3: 12 confirmed', '2: 12 confirmed', '1: 24 set aside']);
  });
  test('goes on where the break was shorter', () => {
    const on = tell(after(play, 9), reading('24'));
    expect(readings(on).at(-1)).toBe('3: 24 captured');
  });
  test('is not begun again where nothing of it was done', () => {
    const untouched = tell(ring({ passes, restartPassAfterMinutes: 10 }), ...first, standBy);
    expect(kinds(tell(after(untouched, 11), affirm))).toEqual(['break accepted']);
  });
  test('begins again with the rounds that take no value', () => {
    const snug = ring({ passes: [{ kind: 'snug' }, torquePass('24.5', '23', '26')], restartPassAfterMinutes: 10 });
    const on = tell(after(tell(snug, next, next, standBy), 11), affirm);
    expect(kinds(on)).toEqual(['break accepted', 'pass restarted']);
    expect(currentCall(on.state)).toMatchObject({ fastener: 1, pass: { index: 1 } });
  });
});
