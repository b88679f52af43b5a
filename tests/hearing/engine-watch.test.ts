import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { EngineWatch } from '../../src/hearing/engine-watch.ts';

const LIMIT = 2_000;

beforeEach(() => vi.useFakeTimers());
afterEach(() => vi.useRealTimers());

/** An engine that is asked and answers as it is told. */
function watched() {
  const engine = { answered: 0, isAsked: true };
  const silent: string[] = [];
  const watch = new EngineWatch(LIMIT);
  watch.watch(engine, (detail) => silent.push(detail));
  return { engine, silent, watch };
}

describe('the watch of the engine', () => {
  it('tells once of an engine that gives no answer for two seconds, and not before', () => {
    const { silent } = watched();
    vi.advanceTimersByTime(LIMIT - 250);
    expect(silent).toEqual([]);
    vi.advanceTimersByTime(500);
    expect(silent).toEqual(['no answer for 2000 ms']);
    vi.advanceTimersByTime(10 * LIMIT);
    expect(silent).toHaveLength(1);
  });

  it('finds nothing in an engine that nobody asks, or that works off a long queue', () => {
    const { engine, silent } = watched();
    engine.isAsked = false;
    vi.advanceTimersByTime(60_000);
    engine.isAsked = true;
    for (let at = 0; at < 60_000; at += 1_000) {
      vi.advanceTimersByTime(1_000);
      engine.answered++;
    }
    expect(silent).toEqual([]);
  });

  it('begins to count when it is asked', () => {
    const { engine, silent } = watched();
    engine.isAsked = false;
    vi.advanceTimersByTime(10_000);
    engine.isAsked = true;
    vi.advanceTimersByTime(LIMIT - 250);
    expect(silent).toEqual([]);
    vi.advanceTimersByTime(250);
    expect(silent).toHaveLength(1);
  });

  it('does not count a sleep of the computer, nor a page that was busy: the answers only wait to be read', () => {
    const { engine, silent } = watched();
    const clock = performance.now.bind(performance);
    let slept = 0;
    const now = vi.spyOn(performance, 'now').mockImplementation(() => clock() + slept);
    for (let times = 0; times < 5; times++) {
      // The timers stand still while the clock goes on, and fire once afterwards, before the answers are read.
      slept += 3_600_000;
      vi.advanceTimersByTime(250);
      engine.answered++;
      vi.advanceTimersByTime(250);
    }
    now.mockRestore();
    expect(silent).toEqual([]);
  });

  it('watches one engine at a time, and none once it is stopped', () => {
    const { silent, watch } = watched();
    const other: string[] = [];
    watch.watch({ answered: 0, isAsked: true }, (detail) => other.push(detail));
    vi.advanceTimersByTime(LIMIT);
    expect([silent.length, other.length]).toEqual([0, 1]);
    watch.watch({ answered: 0, isAsked: true }, (detail) => other.push(detail));
    watch.stop();
    vi.advanceTimersByTime(10 * LIMIT);
    expect(other).toHaveLength(1);
  });

  it('gives up after three restarts within a minute', () => {
    const watch = new EngineWatch(LIMIT);
    expect([0, 1_000, 2_000, 3_000].map((at) => watch.mayRestart(at))).toEqual([true, true, true, false]);
    expect(watch.mayRestart(120_000)).toBe(true);
  });
});
