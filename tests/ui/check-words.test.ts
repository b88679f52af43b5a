import { describe, expect, test } from 'vitest';
import { USUAL } from '../../src/language/sureness.ts';
import type { Voice } from '../../src/storage/voices.ts';
import { forbidsVoice, measuredInWords, surenessOf, verdictOf } from '../../src/ui/check-words.ts';
import { heardSound, soundInWords } from '../../src/ui/heard-sound.ts';

const trials = (right: number): Voice['trials'] =>
  Array.from({ length: 5 }, (_, i) => ({ asked: 'affirm', heard: 'affirm', confidence: 1, isRight: i < right }));
const voice: Voice = {
  name: 'A. Invented',
  checkedAt: '2026-01-02T03:00:00.000Z',
  noise: -60.4,
  speech: -31.2,
  isClipped: false,
  trials: trials(5),
};

describe('what was measured of a voice', () => {
  test('is said in whole decibels', () => {
    expect(measuredInWords(voice)).toBe('Background −60 dB. Voice 29 dB over it. 5 of 5 heard right.');
    expect(measuredInWords({ ...voice, speech: null, trials: [] })).toBe('Background −60 dB.');
    expect(measuredInWords({ ...voice, noise: null, speech: null, trials: [] })).toBe('No sound.');
  });
  test('forbids to start by voice for one shift', () => {
    const bad = { ...voice, trials: trials(1) };
    expect(verdictOf(bad).fitness).toBe('do not start by voice');
    expect(forbidsVoice(bad, '2026-01-02T14:59:00.000Z')).toBe(true);
    expect(forbidsVoice(bad, '2026-01-02T15:01:00.000Z')).toBe(false);
    expect(forbidsVoice(voice, '2026-01-02T03:01:00.000Z')).toBe(false);
    expect(forbidsVoice(null, '2026-01-02T03:01:00.000Z')).toBe(false);
  });
});

describe('how surely people are to be heard', () => {
  const unsure = { ...voice, trials: voice.trials.map((trial) => ({ ...trial, confidence: 0.68 })) };
  const soon = '2026-01-02T04:00:00.000Z';
  test('follows the check of the one who works alone', () => {
    expect(surenessOf([unsure], { mechanic: 'A. Invented', second: null }, soon).reading).toBeCloseTo(0.63, 6);
  });
  test('is not relaxed by the check of another day; what that one asked for beyond the usual stays', () => {
    const alone = { mechanic: 'A. Invented', second: null };
    const later = '2026-01-03T04:00:00.000Z';
    expect(surenessOf([unsure], alone, later)).toEqual(USUAL);
    const misheard = { ...voice, trials: trials(4) };
    expect(surenessOf([misheard], alone, later)).toEqual(surenessOf([misheard], alone, soon));
    expect(surenessOf([misheard], alone, later).reading).toBeGreaterThan(USUAL.reading);
  });
  test('is not relaxed beside somebody who was not checked, nor for somebody else', () => {
    expect(surenessOf([unsure], { mechanic: 'A. Invented', second: 'B. Invented' }, soon)).toEqual(USUAL);
    expect(surenessOf([unsure], { mechanic: 'B. Invented', second: null }, soon)).toEqual(USUAL);
  });
});

describe('the sound in words', () => {
  const of = (noise: number | null, speech: number | null, isClipped = false): string =>
    soundInWords(heardSound({ level: -30, noise, speech, isClipped }, null));
  test.each([
    [null, null, /not measured/],
    [-60, null, /^Background −60 dB$/],
    [-60, -30, /^Quiet: voice 30 dB over the noise$/],
    [-45, -30, /^△ Loud: voice 15 dB/],
    [-30, -31, /^▲ Too loud to trust: voice 0 dB over the noise\. Tap or use the pedal/],
    [-20, null, /^▲ Too loud to trust/],
    [-90, -55, /quiet: come closer/],
  ] as const)('background %s, speech %s', (noise, speech, words) => expect(of(noise, speech)).toMatch(words));
  test('names the gravest first: what is cut off matters less than what cannot be trusted', () => {
    expect(of(-60, -10, true)).toMatch(/cuts the sound off/);
    expect(of(-15, -10, true)).toMatch(/Too loud/);
  });
});
