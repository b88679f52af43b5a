import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { MuteGate } from '../../src/hearing/mute-gate.ts';

describe('the ear', () => {
  test('is open from the start', () => {
    expect(new MuteGate().admits(0)).toBe(true);
    expect(new MuteGate().reasonAt(0)).toBeNull();
  });

  test('opens at once after “asked”, and 300 ms after the own voice', () => {
    const gate = new MuteGate();
    gate.mute('asked');
    expect(gate.unmute('asked', 1_000)).toBe(1_000);
    gate.mute('own voice');
    expect(gate.unmute('own voice', 2_000)).toBe(2_300);
    expect([gate.reasonAt(2_299), gate.reasonAt(2_300)]).toEqual(['own voice', null]);
    expect([gate.admits(2_299), gate.admits(2_300)]).toEqual([false, true]);
  });

  test('keeps the tail of the own voice when another reason ends within it', () => {
    const gate = new MuteGate();
    gate.mute('own voice');
    gate.mute('asked');
    expect(gate.unmute('own voice', 1_000)).toBe(Infinity);
    expect(gate.unmute('asked', 1_100)).toBe(1_300);
  });

  const acts = fc.array(
    fc.record({
      act: fc.constantFrom('mute', 'unmute'),
      why: fc.constantFrom('own voice', 'asked'),
      after: fc.nat({ max: 1_000 }),
    }),
    { maxLength: 40 },
  );

  test('admits nothing while any reason holds, and all sound once 300 ms have passed without one', () => {
    fc.assert(
      fc.property(acts, (list) => {
        const gate = new MuteGate();
        const holding = new Set<string>();
        let now = 0;
        for (const { act, why, after } of list) {
          now += after;
          if (act === 'mute') gate.mute(why);
          else gate.unmute(why, now);
          if (act === 'mute') holding.add(why);
          else holding.delete(why);
          const muted = holding.size > 0;
          expect(gate.admits(now + 300)).toBe(!muted);
          expect(gate.reasonAt(now + 300) !== null).toBe(muted);
          if (muted) expect(gate.reasonAt(now)).toBe(holding.has('asked') ? 'asked' : 'own voice');
        }
      }),
    );
  });
});
