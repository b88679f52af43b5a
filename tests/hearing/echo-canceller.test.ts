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
    expect(below(left.subarray(last), echo.subarray(last))).toBeGreaterThan(25);
  });

  it('follows walls a quarter of a second away', () => {
    const late = sum(
      echo,
      throughRoom(played, 3500).map((sample) => sample / 3),
    );
    const left = inChunks(new EchoCanceller(), late, played);
    expect(below(left.subarray(last), late.subarray(last))).toBeGreaterThan(20);
  });

  it('leaves as little of it, however it is cut into chunks', () => {
    const left = [40, 100, 256, 5_000].map((size) => {
      const canceller = new EchoCanceller();
      const all = new Float32Array(echo.length);
      for (let at = 0; at < echo.length; at += size)
        all.set(canceller.cancel(echo.subarray(at, at + size), played.subarray(at, at + size)), at);
      return below(all.subarray(last), echo.subarray(last));
    });
    for (const decibels of left) expect(decibels).toBeGreaterThan(25);
  });

  it('learns another room within two seconds', () => {
    const canceller = new EchoCanceller();
    inChunks(canceller, echo, played);
    const other = throughRoom(played, 220).map((sample) => -sample);
    const left = inChunks(canceller, other, played);
    expect(below(left.subarray(last), other.subarray(last))).toBeGreaterThan(15);
  });

  it('tells the echo of another sound, and learns nothing by that or while it is not sure', () => {
    const canceller = new EchoCanceller();
    inChunks(canceller, echo, played);
    const other = speechLike(2, RATE, 9);
    const really = throughRoom(other, 160);
    const told = (): number => {
      const wrong = canceller.echoOf(other).map((sample, at) => sample - (really[at] ?? 0));
      return below(wrong.subarray(0, 1.9 * RATE), really.subarray(0, 1.9 * RATE));
    };
    const before = told();
    expect(before).toBeGreaterThan(15);
    canceller.cancel(throughRoom(other, 300), other, false);
    expect(told()).toBe(before);
  });

  it('takes nothing out after a gap that was played before it', () => {
    const canceller = new EchoCanceller();
    inChunks(canceller, echo.subarray(0, last), played.subarray(0, last));
    canceller.begin();
    const person = speechLike(1, RATE, 7);
    expect(inChunks(canceller, person, new Float32Array(person.length))).toEqual(person);
  });

  it('leaves a word of a person who speaks over it, and unlearns nothing by it', () => {
    const word = [last, last + 0.4 * RATE] as const;
    const person = speechLike(4, RATE, 7).map((sample, at) => (at >= word[0] && at < word[1] ? sample * 0.6 : 0));
    const left = inChunks(new EchoCanceller(), sum(echo, person), played);
    const wrong = Float32Array.from(left, (sample, at) => sample - (person[at] ?? 0));
    // As loud as the echo was, the person stands well above what is left of it.
    expect(below(wrong.subarray(...word), person.subarray(...word))).toBeGreaterThan(15);
    expect(below(left.subarray(3 * RATE), echo.subarray(3 * RATE))).toBeGreaterThan(20);
  });

  it('changes nothing where nothing is played', () => {
    const person = speechLike(1, RATE, 7);
    expect(inChunks(new EchoCanceller(), person, new Float32Array(person.length))).toEqual(person);
  });
});
