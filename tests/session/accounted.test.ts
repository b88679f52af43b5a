/** Jobs with openings, seals, counted tools and consumables, whatever is answered: nothing is closed on what is missing, and each can be finished. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { EventBody } from '../../src/session/event.ts';
import type { Meaning } from '../../src/session/intent.ts';
import type { Procedure } from '../../src/procedure/procedure.ts';
import { takenBy } from '../../src/session/stock.ts';
import { goOpenly, meaning, mostAnswers, openly } from './anything.ts';
import { indicating, procedureOf, start, step, tell, threeStuds, tighten, type Play } from './play.ts';

const OPENINGS = ['inlet', 'outlet'];
const applies = fc.option(fc.record({ condition: fc.constant('wet'), is: fc.boolean() }), { nil: undefined });
const work = fc.constantFrom('inspected', 'discarded', 'lubricated', 'seated');
const seals = fc.uniqueArray(work, { maxLength: 2 }).map((all) => all.map((is) => ({ seal: 'ring', is })));
const opening = fc.constantFrom(...OPENINGS);
const outcome = (id: string, then = 'go on') => ({ id, text: `${id}.`, then });

/** One or two steps that belong together. */
const block: fc.Arbitrary<readonly object[]> = fc.oneof(
  fc
    .record({ opens: fc.subarray(OPENINGS), closes: fc.subarray(OPENINGS), seals, reconciles: fc.boolean() })
    .map((more) => [step('any', 'do', more)]),
  opening.map((each) => [step('any', 'open', { opening: each })]),
  opening.map((each) => [step('any', 'close', { opening: each })]),
  fc.record({ seals, reconciles: fc.boolean(), replaces: fc.boolean() }).map(({ replaces, ...more }) => [
    step('any', 'check', {
      ...more,
      outcomes: [outcome('reuse'), ...(replaces ? [outcome('replace')] : []), outcome('stop', 'stay')],
    }),
  ]),
  fc
    .constantFrom('last fastener', undefined)
    .map((heldBefore) => [step('any', 'loosen', { pattern: 'three', ...(heldBefore ? { heldBefore } : {}) })]),
  fc
    .boolean()
    .map((isStarted) => [
      step('any', 'do', { seals: [{ seal: 'ring', is: 'seated' }], handStart: isStarted ? ['three'] : [] }),
      tighten('any'),
    ]),
);
const procedure = fc
  .record({
    blocks: fc.array(fc.tuple(block, applies), { minLength: 1, maxLength: 6 }),
    reuse: fc.constantFrom('never', 'if it passes inspection'),
    quantity: fc.constantFrom(1, undefined),
    countedSeal: fc.constantFrom('wrapper', 'itself', undefined),
    countedTool: fc.boolean(),
  })
  .map(({ blocks, reuse, quantity, countedSeal, countedTool }) => {
    const steps = blocks.flatMap(([some, only]) =>
      some.map((each) => ({ ...each, ...(only ? { applies: only } : {}) })),
    );
    return procedureOf(
      steps.map((each, i) => ({ ...each, id: `step-${i}` })),
      {
        conditions: [{ id: 'wet', question: 'Is it wet?' }],
        openings: OPENINGS.map((id) => ({ id, name: id, closure: 'plug' })),
        tools: [{ ...indicating, counted: countedTool }],
        patterns: [{ ...threeStuds, seal: 'ring' }],
        seals: [
          {
            ...{ id: 'ring', name: 'round seal', fluid: 'oil', reuse, replacedBy: 'new', coatedFrom: 'oil' },
            criteria: reuse === 'never' ? [] : ['no cut'],
          },
        ],
        consumables: [
          {
            ...{ id: 'new', name: 'new seal', expires: true },
            ...(quantity === undefined ? {} : { quantity }),
            ...(countedSeal === undefined ? {} : { counted: countedSeal }),
          },
          { id: 'oil', name: 'oil', counted: 'itself' },
        ],
      },
    );
  });

const POINT_ANSWERS: readonly Meaning[] = [
  { kind: 'negative' },
  { kind: 'affirm' },
  { kind: 'back' },
  { kind: 'next' },
  { kind: 'held' },
  { kind: 'answer', outcome: 'replace' },
  { kind: 'answer', outcome: 'reuse' },
];
const move: fc.Arbitrary<(play: Play) => Meaning> = fc.oneof(
  { weight: 4, arbitrary: fc.constant((play: Play) => openly(play.state)) },
  { weight: 3, arbitrary: fc.constantFrom(...POINT_ANSWERS).map((each) => () => each) },
  { weight: 1, arbitrary: meaning.map((each) => () => each) },
);
const job = fc
  .record({ procedure, moves: fc.array(move, { maxLength: 40, size: 'max' }) })
  .map(({ procedure, moves }) => moves.reduce((play, each) => tell(play, each(play)), start(procedure)));

/** What a lead hand would miss who goes through the record, from its events alone. */
function missingIn({ procedure }: { readonly procedure: Procedure }, bodies: readonly EventBody[]): readonly string[] {
  const lastOf = (is: (body: EventBody) => boolean): number => bodies.findLastIndex(is);
  const answered = (point: string) => (body: EventBody) =>
    body.kind === 'point settled' && body.point === point && body.answer === 'affirm';
  const isMissing = (point: string, used: number, always = false): readonly string[] =>
    (always || used >= 0) && lastOf(answered(point)) <= used ? [point] : [];
  const takes = (id: string) => (body: EventBody) =>
    body.kind === 'point settled' && takenBy(procedure, body.point, body.answer) === id;
  const usesTool = (id: string) => (body: EventBody) =>
    (body.kind === 'reading captured' && body.basis.tool === id) ||
    (body.kind === 'fastener done' &&
      procedure.steps.some((each) => each.id === body.step && each.kind === 'tighten' && each.tool === id));
  return [
    ...procedure.openings.flatMap(({ id }) => {
      const cameOpen = lastOf((body) => body.kind === 'point settled' && body.point === `capped:${id}`);
      return [
        ...isMissing(`connected:${id}`, cameOpen),
        ...isMissing(`closure:${id}`, lastOf(answered(`capped:${id}`))),
      ];
    }),
    ...procedure.tools
      .filter(({ counted }) => counted)
      .flatMap(({ id }) => isMissing(`tool:${id}`, lastOf(usesTool(id)), true)),
    ...procedure.consumables
      .filter(({ counted }) => counted !== undefined)
      .flatMap(({ id, counted }) => isMissing(`consumable:${id}`, lastOf(takes(id)), counted === 'itself')),
  ];
}

const bodies = ({ events }: Play): readonly EventBody[] => events.map(({ body }) => body);

describe('a job with openings, seals, counted tools and consumables, whatever is answered in it', () => {
  test('can always be finished, and is never closed on an opening, a cap, a counted tool or a consumable that nobody accounted for', () => {
    fc.assert(
      fc.property(job, (play) => {
        const end = goOpenly(play, 2 * mostAnswers(play.state.procedure));
        expect(end.state.phase).toBe('closed');
        expect(missingIn(end.state, bodies(end))).toEqual([]);
      }),
      { numRuns: 8000 },
    );
  });

  test('and the one who looks through it does find what is missing', () => {
    const open = procedureOf([step('open', 'open', { opening: 'inlet' }), step('end', 'do')], {
      openings: [{ id: 'inlet', name: 'inlet', closure: 'plug' }],
      tools: [{ ...indicating, counted: true }],
    });
    const play = tell(start(open), { kind: 'affirm' });
    expect(missingIn(play.state, bodies(play))).toEqual(['connected:inlet', 'closure:inlet', 'tool:wrench']);
  });
});
