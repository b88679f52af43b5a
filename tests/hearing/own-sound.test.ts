import { describe, expect, it } from 'vitest';
import { AudioClock } from '../../src/hearing/audio-clock.ts';
import { OwnSound, WORD_RATE } from '../../src/hearing/own-sound.ts';
import { below, power, speechLike, sum, throughRoom } from './echo.ts';

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

  it.each([1, 2, 4, 8, 10])('is less as soon as the way to it was found, whatever is said first (%i)', (seed) => {
    const own = new OwnSound(MICROPHONE);
    const first = speechLike(4, MICROPHONE, seed);
    own.plays(first, MICROPHONE, 0);
    const heard = throughRoom(first, 120 * 48);
    const [left, as] = [heardBeside(own, heard, 0), heardBeside(new OwnSound(MICROPHONE), heard, 0)];
    const lessFrom = (from: number, until: number): number =>
      below(left.subarray(from * WORD_RATE, until * WORD_RATE), as.subarray(from * WORD_RATE, until * WORD_RATE));
    expect(lessFrom(0.8, 1.3)).toBeGreaterThan(5);
    expect(lessFrom(2, 4)).toBeGreaterThan(20);
  });

  it('is learned in spite of a sample that is no number', () => {
    const own = new OwnSound(MICROPHONE);
    own.plays(played, MICROPHONE, 0);
    const heard = throughRoom(played, 120 * 48);
    heard[MICROPHONE] = NaN;
    const left = heardBeside(own, heard, 0);
    heard[MICROPHONE] = 0;
    const as = heardBeside(new OwnSound(MICROPHONE), heard, 0);
    expect(below(left.subarray(2 * WORD_RATE), as.subarray(2 * WORD_RATE))).toBeGreaterThan(10);
  });

  it('stays little where somebody speaks over the beginning of the next announcement', () => {
    const own = new OwnSound(MICROPHONE);
    own.plays(played, MICROPHONE, 0);
    const heard = throughRoom(played, 120 * 48);
    heardBeside(own, heard, 0);
    own.plays(played, MICROPHONE, 10_000);
    const person = speechLike(4, MICROPHONE, 5).map((sample, at) => (at < MICROPHONE ? sample : 0));
    const left = heardBeside(own, sum(heard, person), 10_000);
    const as = heardBeside(new OwnSound(MICROPHONE), heard, 10_000);
    const from = 1.1 * WORD_RATE;
    expect(below(left.subarray(from), as.subarray(from))).toBeGreaterThan(15);
  });

  it('is little soon after the beginning, where nobody can tell to the sample when that was', () => {
    const own = new OwnSound(MICROPHONE);
    const heard = throughRoom(played, 120 * 48);
    const as = heardBeside(new OwnSound(MICROPHONE), heard, 0);
    const from = 0.5 * WORD_RATE;
    [0, 9, -7, 3.3, -10].forEach((late, n) => {
      own.plays(played, MICROPHONE, n * 10_000 + late);
      const left = heardBeside(own, heard, n * 10_000);
      if (n > 0) expect(below(left.subarray(from), as.subarray(from))).toBeGreaterThan(15);
    });
  });

  it('is little again, a few sentences after the loudspeaker was moved', () => {
    const own = new OwnSound(MICROPHONE);
    const [here, there] = [throughRoom(played, 120 * 48), throughRoom(played, 150 * 48)];
    const lefts = [here, there, there].map((heard, n) => {
      own.plays(played, MICROPHONE, n * 10_000);
      return heardBeside(own, heard, n * 10_000);
    });
    const as = heardBeside(new OwnSound(MICROPHONE), there, 0);
    expect(below(lefts[2]?.subarray(WORD_RATE) ?? as, as.subarray(WORD_RATE))).toBeGreaterThan(15);
  });

  it('is little too by a clock that wavers, as that of messages from the audio thread does', () => {
    const own = new OwnSound(MICROPHONE);
    own.plays(played, MICROPHONE, 1000);
    const clock = new AudioClock(MICROPHONE);
    const heard = throughRoom(played, 120 * 48);
    const left: number[] = [];
    for (let at = 0; at < heard.length; at += CHUNK) {
      const arrives = 1000 + (at + CHUNK) / 48 + 5 + ((at * 7) % 60) / 10;
      left.push(
        ...own.without({ samples: heard.slice(at, at + CHUNK), time: clock.timeOf(at, CHUNK, arrives) }).samples,
      );
    }
    const as = heardBeside(new OwnSound(MICROPHONE), heard, 1000);
    expect(below(Float32Array.from(left).subarray(2 * WORD_RATE), as.subarray(2 * WORD_RATE))).toBeGreaterThan(10);
  });

  it('is no more than was heard, soon after a headset is put on', () => {
    const own = new OwnSound(MICROPHONE);
    own.plays(played, MICROPHONE, 0);
    heardBeside(own, throughRoom(played, 120 * 48), 0);
    own.plays(played, MICROPHONE, 10_000);
    const person = speechLike(4, MICROPHONE, 5).map((sample) => sample / 10);
    const left = heardBeside(own, person, 10_000);
    const as = heardBeside(new OwnSound(MICROPHONE), person, 10_000);
    const soon = WORD_RATE / 2;
    expect(power(left.subarray(soon))).toBeLessThanOrEqual(1.01 * power(as.subarray(soon)));
    expect(left.subarray(2 * WORD_RATE)).toEqual(as.subarray(2 * WORD_RATE));
  });

  it('is little also where many short sentences follow one another', () => {
    const own = new OwnSound(MICROPHONE);
    const heard = throughRoom(played, 120 * 48);
    const sentence = 12 * CHUNK;
    const left: number[] = [];
    for (let at = 0; at < heard.length; at += sentence) {
      own.plays(played.slice(at, at + sentence), MICROPHONE, at / 48);
      left.push(...heardBeside(own, heard.slice(at, at + sentence), at / 48));
    }
    const as = heardBeside(new OwnSound(MICROPHONE), heard, 0);
    expect(below(Float32Array.from(left).subarray(2 * WORD_RATE), as.subarray(2 * WORD_RATE))).toBeGreaterThan(10);
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
    // The longest way from the loudspeaker that is followed.
    const last = 0.3 * WORD_RATE;
    expect(left.subarray(last)).toEqual(as.subarray(last));
  });
});
