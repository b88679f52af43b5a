/** The clock of a hold, tick by tick: its time is in the hands of the test. */
import { describe, expect, test } from 'vitest';
import { createTicker } from '../../src/ui/hold-clock.ts';
import { procedureOf, start, step, tell } from '../session/play.ts';

const calls = ['Straight off', 'Down'];
const carry = step('carry', 'hold', { orientation: 'ports up', everySeconds: 10, calls });
const held = tell(start(procedureOf([carry, step('rest', 'do')])), { kind: 'held' });

/** A hold that began at second 0. What the clock brings is listed with the second at which it came. */
function hold() {
  const began = Date.parse(held.state.hold?.since ?? '');
  const heard: string[] = [];
  const now = { ms: 0, play: held, isSaying: false, isHearing: false };
  const utc = (): string => new Date(began + now.ms).toISOString();
  const note = (what: string): void => void heard.push(`${Math.round(now.ms / 1000)}: ${what}`);
  const hands = {
    state: () => now.play.state,
    isSaying: () => now.isSaying,
    isHearing: () => now.isHearing,
    now: utc,
    onCall: () => {
      note('call');
      now.play = tell(now.play, { kind: 'time passed' });
    },
    onTime: note,
  };
  const tick = createTicker(hands, 0);
  const pass = (seconds: number): void => {
    for (const end = now.ms + seconds * 1000; now.ms < end;) {
      now.ms += 250;
      tick(now.ms, utc());
    }
  };
  return { heard, now, pass };
}

describe('the clock of a hold', () => {
  test('brings the call that is left, then tells the time at the interval of the step', () => {
    const { heard, pass } = hold();
    pass(21);
    expect(heard).toEqual(['4: call', '10: Ten seconds. Ports up.', '20: Twenty seconds. Ports up.']);
  });
  test('says nothing into its own words, however long they are', () => {
    const { heard, now, pass } = hold();
    now.isSaying = true;
    pass(15);
    expect(heard).toEqual([]);
    now.isSaying = false;
    pass(1);
    expect(heard).toEqual(['16: Ten seconds. Ports up.']);
  });
  test('is held back by somebody who talks, and not for ever: a loud hall is no reason to say nothing', () => {
    const { heard, now, pass } = hold();
    now.isHearing = true;
    pass(5);
    expect(heard).toEqual([]);
    pass(30);
    expect(heard.length).toBeGreaterThan(1);
  });
  test('stops when the weight is set down', () => {
    const { heard, now, pass } = hold();
    now.play = tell(now.play, { kind: 'set down' });
    pass(60);
    expect(heard).toEqual([]);
  });
});
