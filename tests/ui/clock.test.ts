/** The moment of the device: its calendar day is that of the place where it stands, not of Greenwich. */
import { afterEach, describe, expect, test, vi } from 'vitest';
import { fold, begin } from '../../src/session/fold.ts';
import { dayOf } from '../../src/session/intent.ts';
import { instantAt, now, today } from '../../src/ui/clock.ts';
import { demo, eventOf, people } from '../session/play.ts';

const zone = process.env.TZ;
afterEach(() => {
  vi.useRealTimers();
  if (zone === undefined) delete process.env.TZ;
  else process.env.TZ = zone;
});
function at(utc: string, timeZone: string): void {
  process.env.TZ = timeZone;
  vi.useFakeTimers({ now: new Date(utc) });
}

describe('the calendar day of the device', () => {
  test.each([
    ['2026-11-26T03:30:00Z', 'America/Denver', '2026-11-25'],
    ['2026-11-26T20:30:00Z', 'Asia/Tokyo', '2026-11-27'],
    ['2026-11-26T12:00:00Z', 'Europe/Zurich', '2026-11-26'],
    ['2026-12-31T23:30:00Z', 'Europe/Zurich', '2027-01-01'],
  ])('at %s in %s is %s', (utc, timeZone, day) => {
    at(utc, timeZone);
    expect(today()).toBe(day);
    expect(now().day).toBe(day);
    expect(instantAt(performance.now()).utc).toBe(new Date(utc).toISOString());
  });

  test('is the day by which the session tells whether something has run out', () => {
    at('2026-11-26T03:30:00Z', 'America/Denver');
    const opened = { ...eventOf({ kind: 'continued' }, 0), at: now() };
    expect(fold(begin(demo(), people), opened).day).toBe('2026-11-25');
  });

  test('is the one of UTC where an entry keeps none', () =>
    expect(dayOf({ utc: '2026-11-26T03:30:00Z', monotonic: 0 })).toBe('2026-11-26'));
});
