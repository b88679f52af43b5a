/** What the record sheet, the table and the time line tell of weights held, values observed, decisions and signatures. */
import { describe, expect, test } from 'vitest';
import { heldWeights } from '../../src/record/holds.ts';
import { recordSheet } from '../../src/record/record-sheet.ts';
import { valuesCsv } from '../../src/record/values-csv.ts';
import { describe as line } from '../../src/ui/describe.ts';
import { kindsOf } from '../../src/ui/replay/event-kinds.ts';
import type { Meaning } from '../../src/session/intent.ts';
import { smallProcedure } from '../support/small-procedure.ts';
import { affirm, step, tell } from '../session/play.ts';
import { opening, recordIn, sealAll } from './sealed.ts';

const job = {
  ...smallProcedure,
  signatures: ['mechanic'],
  steps: [
    step('lift', 'hold', { calls: ['Straight off'], orientation: 'ports up' }),
    // A name that a spreadsheet would take for a formula.
    { ...step('level', 'measure', { what: 'level', unit: 'mm', window: { min: '40', max: '60' } }), title: '=level' },
    step('look', 'witness', { what: 'all of it', independent: true }),
  ],
};
const meanings: readonly Meaning[] = [
  { kind: 'held' },
  { kind: 'help' },
  { kind: 'set down' },
  { kind: 'observed', value: '70' },
  affirm,
  { kind: 'leave open' },
  { kind: 'reason', text: 'glass is dirty' },
  affirm,
  { kind: 'inspects', name: 'Ada', agrees: true },
];
const open = tell(await opening(job), ...meanings);
const seq = open.state.observed[0]?.seq ?? -1;
const played = tell(
  open,
  { kind: 'dispose', of: seq, what: 'deferred', by: 'Ada', note: 'Look again tomorrow.' },
  { kind: 'sign', role: 'mechanic', name: open.state.people.mechanic },
);
const record = await recordIn(await sealAll(played.events));
const sheet = recordSheet(record, { timeZone: 'UTC', made: '2026-03-02T00:00:00Z', root: '', thumbprint: null });

describe('the record sheet', () => {
  test('has how long each weight was held, and that help was called', () =>
    expect(sheet.holds).toEqual([expect.stringMatching(/^lift: held for \d+ s, from .*Z\. HELP CALLED once$/)]));
  test('has every observed value with its window and what became of it', () =>
    expect(sheet.values).toEqual([
      expect.stringMatching(/^=level: 70 mm, OVER 40 to 60 mm; confirmed, by .+Z\. LEFT OPEN$/),
    ]));
  test('has who inspected, who decided and who signed', () => {
    expect(sheet.steps.at(-1)?.state).toEqual(['done', 'inspected independently by Ada']);
    expect(sheet.openPoints).toEqual([
      '=level: 70 mm, over the window, reason given: “glass is dirty”. LEFT OPEN. Decided by Ada: deferred (“Look again tomorrow.”)',
    ]);
    expect(sheet.signatures).toEqual([expect.stringContaining(`Signed as mechanic by ${open.state.people.mechanic}`)]);
    expect(sheet.isClosed).toBe(true);
  });
  test('says of whoever signs as inspector that they took part in the work, and so does the entry', async () => {
    const signs = async (name: string) => {
      const inspected = tell(await opening({ ...job, signatures: ['inspector'] }), ...meanings);
      const dispose = { kind: 'dispose', of: seq, what: 'deferred', by: 'Ada', note: 'Look again.' } as const;
      const { events } = tell(inspected, dispose, { kind: 'sign', role: 'inspector', name });
      const entry = events.find(({ body }) => body.kind === 'signed');
      const { signatures } = recordSheet(await recordIn(await sealAll(events)), {
        ...{ timeZone: 'UTC', made: '2026-03-02T00:00:00Z', root: '', thumbprint: null },
      });
      return [signatures[0], entry && line(entry, tell(inspected, dispose).state)];
    };
    const second = open.state.people.second ?? '';
    expect(await signs(second)).toEqual([
      expect.stringMatching(/pressed on purpose\. TOOK PART IN THIS WORK$/),
      `Signed by ${second} as inspector, who took part in this work`,
    ]);
    expect(await signs('Ada')).toEqual([expect.stringMatching(/pressed on purpose$/), 'Signed by Ada as inspector']);
  });
  test('says that a signature is missing', async () => {
    const unsigned = recordSheet(await recordIn(await sealAll(open.events)), {
      timeZone: 'UTC',
      made: '2026-03-02T00:00:00Z',
      root: '',
      thumbprint: null,
    });
    expect(unsigned.signatures).toEqual(['NOT SIGNED by the mechanic']);
    expect(unsigned.openPoints[0]).toContain('NOT DECIDED');
  });
});

test('the table of observed values keeps a formula from being one', () => {
  const [, row] = valuesCsv(record).split('\r\n');
  expect(row).toContain(`"'=level"`);
  expect(row).toContain('70,mm,40,60,over,confirmed,,yes');
});

test('a hold that the record does not see the end of has no length', async () => {
  const cut = await sealAll(tell(await opening(job), { kind: 'held' }).events);
  expect(heldWeights(cut)).toMatchObject([{ step: 'lift', end: null, seconds: null, helps: 0 }]);
});

test('the replay finds holds, values and decisions by their kind', () => {
  const kinds = played.events.flatMap(({ body }) => kindsOf(body, played.state.procedure));
  expect(new Set(kinds)).toEqual(
    new Set(['step', 'hold', 'doubt', 'reading', 'outside', 'confirmation', 'deviation', 'witness']),
  );
});
