import { describe, expect, it } from 'vitest';
import { EchoCanceller } from '../../src/hearing/echo-canceller.ts';
import { below, speechLike, sum, throughRoom } from './echo.ts';

const RATE = 16_000;
const CHUNK = 683;

function inChunks(canceller: EchoCanceller, heard: Float32Array, played: Float32Array): Float32Array {
  const left = new Float32Array(heard.length);
  for (let at = 0; at < heard.length; at += CHUNK)
    left.set(canceller.cancel(heard.subarray(at, at + CHUNK), played.subarray(at, at + CHUNK)), at);
  return left;
}

describe('taking what is played out of what is heard', () => {
  const played = speechLike(4, RATE, 1);
  const echo = throughRoom(played, 160);
  const last = 2 * RATE;

  it('leaves little of it after two seconds of the room', () => {
    const left = inChunks(new EchoCanceller(), echo, played);
    expect(below(left.subarray(last), echo.subarray(last))).toBeGreaterThan(15);
  });

  it('leaves a word of a person who speaks over it, and unlearns nothing by it', () => {
    const word = [last, last + 0.4 * RATE] as const;
    const person = speechLike(4, RATE, 7).map((sample, at) => (at >= word[0] && at < word[1] ? sample * 0.6 : 0));
    const left = inChunks(new EchoCanceller(), sum(echo, person), played);
    const wrong = Float32Array.from(left, (sample, at) => sample - (person[at] ?? 0));
    // As loud as the echo was, the person stands well above what is left of it.
    expect(below(wrong.subarray(...word), person.subarray(...word))).toBeGreaterThan(10);
    expect(below(left.subarray(3 * RATE), echo.subarray(3 * RATE))).toBeGreaterThan(15);
  });

  it('changes nothing where nothing is played', () => {
    const person = speechLike(1, RATE, 7);
    expect(inChunks(new EchoCanceller(), person, new Float32Array(person.length))).toEqual(person);
  });
});
