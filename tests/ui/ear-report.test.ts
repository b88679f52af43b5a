import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { failure, type FailureCode } from '../../src/hearing/failures.ts';
import type { HearingState } from '../../src/hearing/types.ts';
import { createEarReport } from '../../src/ui/ear-report.ts';
import { HUSH_WORDS, spokenWords } from '../../src/language/hush.ts';

const LISTENING: HearingState = { kind: 'listening' };
const LOADING: HearingState = { kind: 'loading', received: 0, total: null };
const failed = (code: FailureCode): HearingState => ({ kind: 'failed', failure: failure(code) });

beforeEach(() => vi.useFakeTimers());
afterEach(() => vi.useRealTimers());

function report() {
  const said: string[] = [];
  return { said, see: createEarReport((text) => said.push(text)) };
}

describe('what is said of the ear', () => {
  it('is that it hears no more, once, and that it hears again', () => {
    const { said, see } = report();
    see(LISTENING);
    see(failed('microphone lost'));
    vi.advanceTimersByTime(2_000);
    expect(said).toEqual([]);
    vi.advanceTimersByTime(60_000);
    see(failed('microphone silent'));
    vi.advanceTimersByTime(60_000);
    expect(said).toEqual(['The microphone is lost. Go on by touch or keys.']);
    see(LISTENING);
    see({ kind: 'hearing', partial: 'one' });
    expect(said.slice(1)).toEqual(['Listening again.']);
  });

  it('is nothing where it mends itself at once: no word is lost', () => {
    const { said, see } = report();
    see(LISTENING);
    for (let times = 0; times < 5; times++) {
      see(failed('engine stopped'));
      see(LOADING);
      vi.advanceTimersByTime(2_500);
      see(LISTENING);
      vi.advanceTimersByTime(10_000);
    }
    expect(said).toEqual([]);
  });

  it('is what the engine’s trouble is, where another does not come either', () => {
    const { said, see } = report();
    see(LISTENING);
    see(failed('engine stopped'));
    see(LOADING);
    vi.advanceTimersByTime(20_000);
    expect(said).toEqual(['Hearing has failed. Go on by touch or keys.']);
  });

  it('is what to do where the browser holds the sound', () => {
    const { said, see } = report();
    see({ kind: 'muted', why: 'own voice' });
    see(failed('microphone held'));
    vi.advanceTimersByTime(20_000);
    expect(said).toEqual(['The browser holds the microphone back. Touch the screen once.']);
  });

  it('is nothing of an ear that never heard, nor of one that was closed', () => {
    const { said, see } = report();
    see({ kind: 'off' });
    see(failed('microphone refused'));
    vi.advanceTimersByTime(60_000);
    see(LISTENING);
    see({ kind: 'off' });
    see(failed('microphone absent'));
    vi.advanceTimersByTime(60_000);
    expect(said).toEqual([]);
  });

  it('can be hushed', () => {
    const { said, see } = report();
    for (const code of ['microphone lost', 'microphone held', 'engine given up'] as const) {
      see(LISTENING);
      see(failed(code));
      vi.advanceTimersByTime(60_000);
    }
    see(LISTENING);
    expect(said.length).toBeGreaterThan(3);
    expect(said.flatMap(spokenWords).filter((word) => HUSH_WORDS.some((hush) => word.startsWith(hush)))).toEqual([]);
  });
});
