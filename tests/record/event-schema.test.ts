import fc from 'fast-check';
import * as v from 'valibot';
import { describe, expect, test } from 'vitest';
import { EventBodySchema } from '../../src/record/event-schema.ts';
import { job } from '../session/anything.ts';
import {
  affirm,
  answer,
  click,
  correction,
  demo,
  disregard,
  dial,
  indicating,
  negative,
  newtonMetres,
  next,
  procedureOf,
  reading,
  start,
  step,
  tell,
  tighten,
  turned,
  type Play,
} from '../session/play.ts';

const continued = tell(
  start(demo()),
  { kind: 'stand by' },
  next,
  { kind: 'continue' },
  { kind: 'say again' },
  { kind: 'question', question: { about: 'logged', fastener: 4 } },
  { kind: 'reopen' },
  affirm,
  next,
  affirm,
  { kind: 'back' },
);
const conditional = procedureOf(
  [
    step('strip', 'do', { applies: { condition: 'coated', is: true } }),
    step('look', 'check', {
      outcomes: [
        { id: 'reuse', text: 'Reuse it.', then: 'go on' },
        { id: 'replace', text: 'Replace it.', then: 'go on' },
      ],
    }),
    tighten('ring', { runDown: { used: true, minimum: newtonMetres('2'), tool: 'dial' } }),
  ],
  { tools: [indicating, dial], conditions: [{ id: 'coated', question: 'Is it coated?' }] },
);
const readings = tell(
  start(conditional),
  ...[negative, answer('reuse'), answer('nothing'), next, reading('1'), negative, reading('3'), affirm, disregard],
  ...['3', '3', '3'].flatMap((value) => [reading(value), affirm]),
  ...[
    reading('27', 3),
    click(),
    reading('40'),
    { kind: 'silence' } as const,
    { kind: 'question', question: { about: 'why' } } as const,
    affirm,
    correction('27'),
    affirm,
    turned,
  ],
  { kind: 'reading', reading: { fastener: null, value: '24.25' }, doubts: ['between marks', 'not sure'] },
  { kind: 'unclear', doubt: 'several readings', readings: [{ fastener: null, value: '27' }] },
);

const witness = (value: string) => ({ kind: 'witness', reading: { fastener: null, value } }) as const;
const witnessed = tell(
  start(procedureOf([tighten('ring', { confirm: 'witness each' })])),
  ...[witness('24'), reading('24'), affirm, witness('25'), reading('24'), witness('24'), affirm],
);

describe('the schema of events', () => {
  test.each<[string, Play]>([
    ['a witness', witnessed],
    ['a walk', continued],
    ['readings of every fate', readings],
  ])('lets in what the session writes: %s', (_, { events }) => {
    for (const { body } of events)
      expect(v.safeParse(EventBodySchema, body)).toMatchObject({ success: true, output: body });
  });
  test('lets in what the session writes, whatever is said to it', () => {
    fc.assert(
      fc.property(job, ({ events }) => {
        for (const { body } of events) expect(v.safeParse(EventBodySchema, body).success).toBe(true);
      }),
      { numRuns: 200 },
    );
  });
  test('is tried here on every kind but the opening, the end and work done by hand', () => {
    const kinds = new Set([...continued.events, ...readings.events].map(({ body }) => body.kind));
    expect([...kinds].sort()).toEqual(
      [
        'answered',
        'asked',
        'condition answered',
        'continued',
        'reading captured',
        'reading confirmed',
        'reading disregarded',
        'reading rejected',
        'refused',
        'reopened',
        'repeat asked',
        'step done',
        'step skipped',
        'step taken back',
        'stood by',
        'timed out',
        'warning acknowledged',
      ].sort(),
    );
  });
});
