import { describe, expect, it } from 'vitest';
import { OwnSound, WORD_RATE } from '../../src/hearing/own-sound.ts';
import { below, speechLike, throughRoom } from './echo.ts';

const MICROPHONE = 48_000;
const CHUNK = 2_048;

function heardBeside(own: OwnSound, heard: Float32Array, from: number): Float32Array {
  const left: number[] = [];
  for (let at = 0; at < heard.length; at += CHUNK)
    left.push(...own.without({ samples: heard.slice(at, at + CHUNK), time: from + at / 48 }).samples);
  return Float32Array.from(left);
}

describe('what the microphone hears beside what the app plays', () => {
  const played = speechLike(4, MICROPHONE, 1);

  it('is little but the room, once the way to it is known', () => {
    const own = new OwnSound(MICROPHONE);
    own.plays(played, MICROPHONE, 1000);
    const heard = throughRoom(played, 120 * 48);
    const left = heardBeside(own, heard, 1000);
    const as = heardBeside(new OwnSound(MICROPHONE), heard, 1000);
    expect(left.length).toBe(as.length);
    expect(below(left.subarray(2 * WORD_RATE), as.subarray(2 * WORD_RATE))).toBeGreaterThan(10);
  });

  it('is all of it where a headset keeps the two apart', () => {
    const own = new OwnSound(MICROPHONE);
    own.plays(played, MICROPHONE, 0);
    const person = speechLike(2, MICROPHONE, 5);
    expect(heardBeside(own, person, 0)).toEqual(heardBeside(new OwnSound(MICROPHONE), person, 0));
  });

  it('is a person again as soon as the voice was stopped', () => {
    const [own, other] = [new OwnSound(MICROPHONE), new OwnSound(MICROPHONE)];
    const stop = own.plays(played, MICROPHONE, 0);
    const echo = throughRoom(played, 120 * 48).slice(0, 40 * CHUNK);
    const stoppedAt = echo.length / 48;
    heardBeside(own, echo, 0);
    heardBeside(other, echo, 0);
    stop(stoppedAt - 120);
    const person = speechLike(1, MICROPHONE, 5);
    const [left, as] = [heardBeside(own, person, stoppedAt), heardBeside(other, person, stoppedAt)];
    expect(left.subarray(WORD_RATE / 10)).toEqual(as.subarray(WORD_RATE / 10));
  });
});
