import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { checkContainer, USUAL_MARGIN_PERCENT } from '../../src/lifting/index.ts';
import { volume } from '../../src/units/index.ts';
import { refusal } from '../units/refusal.ts';

describe('the container under the component', () => {
  it('takes all that may drain and a fifth more (common practice)', () => {
    expect(USUAL_MARGIN_PERCENT).toBe(20);
    expect(checkContainer(volume(6, 'L'), [volume(4, 'L'), volume(1000, 'mL')])).toEqual({
      isEnough: true,
      needed: volume(6, 'L'),
      spare: volume(0, 'L'),
      sentence: 'The container holds 6.0 L; 6.0 L may be needed: 5.0 L and a margin of 20 %.',
    });
  });

  it('is found too small in words, rounded on the safe side', () => {
    const found = checkContainer(volume(5.99, 'L'), [volume(5.01, 'L')]);
    expect(found.isEnough).toBe(false);
    expect(found.spare.value).toBeLessThan(0);
    expect(found.sentence).toBe(
      'The container is too small: it holds 5.9 L, but 6.1 L may be needed: 5.1 L and a margin of 20 %.',
    );
  });

  it('takes another margin where it is given', () => {
    expect(checkContainer(volume(5, 'L'), [volume(5, 'L')], 0).isEnough).toBe(true);
    expect(checkContainer(volume(5, 'L'), [volume(5, 'L')], 1).isEnough).toBe(false);
  });

  it('is never made enough by more fluid or a larger margin', () => {
    const size = fc.double({ min: 0, max: 100, noNaN: true });
    fc.assert(
      fc.property(
        fc.double({ min: 0.1, max: 100, noNaN: true }),
        size,
        size,
        size,
        size,
        (holds, drains, more, margin, wider) => {
          const tight = checkContainer(volume(holds, 'L'), [volume(drains, 'L')], margin);
          const tighter = checkContainer(volume(holds, 'L'), [volume(drains, 'L'), volume(more, 'L')], margin + wider);
          expect(tight.isEnough || !tighter.isEnough).toBe(true);
        },
      ),
    );
  });

  it.each([
    ['bad-volume', () => checkContainer(volume(0, 'L'), [])],
    ['bad-volume', () => checkContainer(volume(1, 'L'), [volume(-1, 'L')])],
    ['bad-margin', () => checkContainer(volume(1, 'L'), [], -1)],
    ['bad-margin', () => checkContainer(volume(1, 'L'), [], NaN)],
  ])('is refused with %s', (code, call) => {
    expect(refusal(call)).toBe(code);
  });
});
