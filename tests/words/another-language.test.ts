/**
 * Whether every word that is spoken or written down comes from the catalogue: in a made-up language all of them stand in
 * brackets, and what stands outside is a name from the procedure or a number.
 */
import { afterEach, describe, expect, test } from 'vitest';
import { announce } from '../../src/language/announce.ts';
import { NUMBER_WORDS } from '../../src/language/numbers/index.ts';
import { prompt } from '../../src/language/prompt.ts';
import { sayRefusal } from '../../src/language/say-refusal.ts';
import { sayPlain } from '../../src/language/say.ts';
import type { Procedure } from '../../src/procedure/procedure.ts';
import { DEVIATION_KINDS, type Meaning } from '../../src/session/intent.ts';
import { describe as describeEvent } from '../../src/ui/describe.ts';
import { currentCall } from '../../src/session/state.ts';
import { useWords } from '../../src/words/said.ts';
import type { Words } from '../../src/words/words.ts';
import { mostAnswers, openly } from '../session/anything.ts';
import { demo, fireBoat, people, start, tell, type Play } from '../session/play.ts';

// ---- the made-up language --------------------------------------------------------------------------------------------

const parts = import.meta.glob<Record<string, unknown>>(['../../src/words/*.ts', '!**/{said,words}.ts'], {
  eager: true,
});

/** Every word of a part in brackets, and what each of its functions gives. */
function bracketed(words: unknown): unknown {
  if (typeof words === 'string') return `⟦${words}⟧`;
  if (typeof words === 'function')
    return (...args: readonly unknown[]) => bracketed((words as (...all: readonly unknown[]) => unknown)(...args));
  if (Array.isArray(words)) return ['⟦', ...(words as readonly unknown[]), '⟧'];
  if (typeof words !== 'object' || words === null) return words;
  return Object.fromEntries(Object.entries(words).map(([key, each]) => [key, bracketed(each)]));
}

const madeUp = Object.fromEntries(
  Object.values(parts).flatMap((part) => Object.entries(part).map(([name, words]) => [name, bracketed(words)])),
) as unknown as Words;

afterEach(() => useWords({}));

// ---- what is no word of the catalogue --------------------------------------------------------------------------------

/** Where a procedure holds names and texts for people. Its other texts are words that the interface has its own for. */
const NAMED = new Set([
  ...['title', 'name', 'document', 'revision', 'text', 'say', 'what', 'question', 'orientation', 'calls', 'stages'],
  ...['criteria', 'partNumber', 'fastener'],
]);

const namesIn = (value: unknown, key = ''): readonly string[] => {
  if (typeof value === 'string') return NAMED.has(key) ? [value] : [];
  if (Array.isArray(value)) return value.flatMap((each) => namesIn(each, key));
  if (typeof value !== 'object' || value === null) return [];
  return Object.entries(value).flatMap(([name, each]) => namesIn(each, name));
};

/** A text without what stands in brackets, the inner ones first. */
function outside(text: string): string {
  const without = text.replace(/⟦[^⟦⟧]*⟧/gu, ' ').replace(/\s+/gu, ' ');
  return without === text ? text : outside(without);
}

/** What of a text is neither in brackets nor a name of the procedure nor a number: '' where nothing is. */
function restIn(procedure: Procedure): (text: string) => string {
  const reported: readonly string[] = DEVIATION_KINDS;
  const names = [...namesIn(procedure), ...Object.values(people), 'Sixth person', 'Fifth person']
    .filter((name) => !reported.includes(name))
    .flatMap((name) => [name, outside(sayPlain(name)).trim()]);
  // Whatever their capitals: what is said slowly has one after each pause.
  const known = [...new Set([...names, ...NUMBER_WORDS])]
    .sort((a, b) => b.length - a.length)
    .map((name) => new RegExp(`(?<!\\p{L})${name.replace(/[.*+?^${}()|[\]\\]/gu, '\\$&')}(?!\\p{L})`, 'giu'));
  return (text) => {
    const rest = outside(text);
    if (!/[\p{L}⟦⟧]/u.test(rest)) return '';
    return known
      .reduce((left, name) => left.replace(name, ' '), rest)
      .replace(/[^\p{L}⟦⟧]+/gu, ' ')
      .trim();
  };
}

// ---- a whole job -----------------------------------------------------------------------------------------------------

/** What is said out of turn, once at every kind of moment of the job: most of it is refused. */
const OUT_OF_TURN: readonly Meaning[] = [
  ...(['next', 'back', 'affirm', 'negative', 'disregard', 'turned', 'held', 'set down'] as const).map((kind) => ({
    kind,
  })),
  ...(['leave open', 'continue', 'hand over', 'silence'] as const).map((kind) => ({ kind })),
  { kind: 'reading', reading: { fastener: 99, value: '1' } },
  { kind: 'reading', reading: { fastener: null, value: '999' } },
  { kind: 'correction', reading: { fastener: 2, value: '12' } },
  { kind: 'witness', reading: { fastener: null, value: '12' } },
  { kind: 'observed', value: '-3' },
  { kind: 'click', fastener: 3 },
  { kind: 'answer', outcome: 'reuse' },
  { kind: 'report', what: 'damage' },
  { kind: 'witness says', agrees: false },
  { kind: 'inspects', name: people.mechanic, agrees: true },
  { kind: 'sign', role: 'mechanic', name: 'Sixth person' },
  { kind: 'dispose', of: 3, what: 'deferred', by: people.mechanic, note: '' },
  { kind: 'second person', name: people.mechanic },
  { kind: 'unclear', doubt: 'other unit', readings: [] },
  { kind: 'unclear', doubt: 'several readings', readings: [] },
  { kind: 'unclear', doubt: 'not sure', readings: [] },
  ...(['place', 'left', 'last readings', 'why', 'slowly'] as const).map((about): Meaning => ({
    kind: 'question',
    question: { about },
  })),
  { kind: 'question', question: { about: 'logged', fastener: 1 } },
];

/** All that is spoken and written down of what a meaning leads to, without going on from there. */
function saidOf(play: Play, meaning: Meaning): readonly string[] {
  const after = tell(play, meaning);
  const added = after.events.slice(play.events.length);
  const bodies = added.map(({ body }) => body);
  return [
    // What is said piece by piece is one text.
    announce(after.state, bodies).join(' '),
    prompt(after.state, bodies).join(' '),
    ...(after.last.kind === 'refused' ? [sayRefusal(play.state, after.last.reason)] : []),
    ...added.map((event) => describeEvent(event, after.state)),
  ];
}

/** Everything that is said along a job which is worked to its end, and out of turn on the way. */
function saidAlong(procedure: Procedure): readonly string[] {
  const said = new Set<string>();
  const met = new Set<string>();
  let play = start(procedure);
  for (let left = mostAnswers(procedure); play.state.phase !== 'closed' && left > 0; left--) {
    const onwards = openly(play.state);
    const moment = `${play.state.at} ${currentCall(play.state)?.pass.index} ${onwards.kind}`;
    for (const meaning of [onwards, ...(met.has(moment) ? [] : OUT_OF_TURN)])
      for (const text of saidOf(play, meaning)) said.add(text);
    met.add(moment);
    play = tell(play, onwards);
  }
  expect(play.state.phase, 'the job is worked to its end').toBe('closed');
  return [...said];
}

describe.each([
  ['oil cooler', demo()],
  ['pump cover', fireBoat()],
])('along the whole job of the %s', (_, procedure) => {
  test('every word that is spoken or written down is of the chosen language, but for names and numbers', () => {
    useWords(madeUp);
    const restOf = restIn(procedure);
    const said = saidAlong(procedure);
    expect(said.length).toBeGreaterThan(300);
    expect(said.flatMap((text) => (restOf(text) === '' ? [] : [`${restOf(text)} | ${text}`]))).toEqual([]);
  });
});

test('a word that does not come from the catalogue would be found', () => {
  useWords(madeUp);
  const restOf = restIn(demo());
  expect(restOf('⟦Stop.⟧ Say it ⟦again⟧.')).toBe('Say it');
  expect(restOf('⟦⟦stud⟧ four⟧ Oil cooler, drive gearbox, two four')).toBe('');
  expect(restOf('over torque')).toBe('over torque');
});

test('in English nothing stands in brackets', () => {
  const { state } = start(demo());
  expect(prompt(state).join(' ')).not.toMatch(/[⟦⟧]/u);
});
