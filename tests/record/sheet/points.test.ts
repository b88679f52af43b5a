/** What the record sheet says of a seal whose place others took: each part by what was seen of it. */
import { expect, test } from 'vitest';
import { recordSheet } from '../../../src/record/record-sheet.ts';
import { about, seal } from '../../session/points-play.ts';
import { affirm, answer, back, negative, next, step, tell } from '../../session/play.ts';
import { smallProcedure } from '../../support/small-procedure.ts';
import { opening, recordIn, sealAll } from '../sealed.ts';

const OPTIONS = { timeZone: 'UTC', made: '2026-04-01T10:00:00.000Z', root: 'a'.repeat(64), thumbprint: 'thumbprint' };
const inspection = {
  ...smallProcedure,
  tools: [],
  patterns: [],
  steps: [step('look', 'do', about('inspected')), step('end', 'do')],
  ...seal(),
};
type Steps = Parameters<typeof tell>[1][];
const pointsAfter = async (...meanings: Steps): Promise<readonly string[]> => {
  const { events } = tell(await opening(inspection), ...meanings);
  return recordSheet(await recordIn(await sealAll(events)), OPTIONS).points.map(({ what }) => what);
};

test('a new seal that failed as well stands with its fault beside the one after it', async () =>
  expect(
    await pointsAfter(affirm, negative, answer('replace'), affirm, negative, answer('replace'), affirm, affirm),
  ).toEqual([
    'Round seal, “no cut”: met',
    'Round seal, “no flat spot”: FAILED',
    'Round seal: replaced, it failed “no flat spot”. New part X-12',
    'New round seal, “no cut”: met',
    'New round seal, “no flat spot”: FAILED',
    'Round seal: replaced, it failed “no flat spot”. New part X-12',
    'New round seal, “no cut”: met',
    'New round seal, “no flat spot”: met',
  ]));

test('where the step was taken back and the old seal used again, the new one did not stay', async () =>
  expect(
    await pointsAfter(negative, answer('replace'), affirm, affirm, next, back, affirm, affirm, answer('reuse')),
  ).toEqual([
    'Round seal, “no cut”: FAILED (ANSWERED ANEW)',
    'Round seal: replaced, it failed “no cut”. New part X-12 (STEP TAKEN BACK)',
    'New round seal, “no cut”: met (STEP TAKEN BACK)',
    'New round seal, “no flat spot”: met (STEP TAKEN BACK)',
    'Round seal, “no cut”: met',
    'Round seal, “no flat spot”: met',
    'Round seal: used again',
  ]));
