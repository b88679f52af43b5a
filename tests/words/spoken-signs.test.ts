import { expect, test } from 'vitest';
import { TORQUE_UNIT_SPOKEN } from '../../src/language/words.ts';
import { unitsOf } from '../../src/units/index.ts';
import { spokenSigns } from '../../src/words/spoken-signs.ts';

test.each(unitsOf('torque'))('%s is said in English as it is listened for', (unit) =>
  expect(spokenSigns.torque[unit]).toBe(TORQUE_UNIT_SPOKEN[unit][0]),
);
