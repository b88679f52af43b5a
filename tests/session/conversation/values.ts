/** Values, heard rightly or not: of the stud that is called or another, said, typed, corrected, witnessed, clicked. */
import fc from 'fast-check';
import { expect } from 'vitest';
import { typedWords } from '../../../src/language/typed.ts';
import { readBackIn, spelled } from './ears.ts';
import { command, expectIdle, meet, NOT_UNDERSTOOD, spoken, SURENESS, sureness, type Command } from './meeting.ts';
import { calledIn, callOfValue, pending, settingIn, type Model } from './model.ts';
import { sayPlain } from './phrases.ts';
import { torqueOf, type Call } from './rules.ts';
import type { Said, Word } from './words.ts';

/** A value by what it is to the conversation. */
type Amount = (model: Model) => string;
const decimal = (torque: number): string => String(Math.max(0, torque) / 10_000);

/** What is called out; of a nut's drag, any plausible one. */
const asCalled: Amount = (model) => {
  const call = calledIn(model);
  return (call && settingIn(model, call)) ?? '2.5';
};
/** Of the reading that waits, some marks of its tool up or down. */
const beside =
  (marks: number): Amount =>
  (model) => {
    const waits = pending(model);
    return waits ? decimal(torqueOf(waits.text) + marks * waits.call.mark) : '24.5';
  };
const exactly =
  (text: string): Amount =>
  () =>
    text;

export const anyNumber = fc
  .tuple(fc.integer({ min: 0, max: 9999 }), fc.constantFrom('', '.5', '.0', '.50', '.25', '.9'))
  .map(([whole, places]) => `${whole}${places}`);
const anything: fc.Arbitrary<Amount> = fc
  .oneof(
    // Inside a window, and beside it by a digit, a point, a place.
    fc.constantFrom('2.5', '3', '18', '19.5', '14.5', '25', '24', '24.50', '20'),
    fc.constantFrom('1.9', '22', '30', '15.5', '250', '2.50', '52', '42.5', '145', '13', '50', '0'),
    anyNumber,
  )
  .map(exactly);
const amount = fc.oneof({ weight: 3, arbitrary: fc.constant(asCalled) }, { weight: 2, arbitrary: anything });
/** The same, one mark off, just more than that, and anything. */
const witnessed = fc.oneof(
  { weight: 4, arbitrary: fc.constant(beside(0)) },
  { weight: 3, arbitrary: fc.constantFrom(1, -1, 1.1, -1.1, 2, -4).map(beside) },
  { weight: 1, arbitrary: anything },
);

type Lead = 'value' | 'correction' | 'witness';
const LEADS = { value: '', correction: 'correction ', witness: 'witness ' };
const KINDS = { value: 'reading', correction: 'correction', witness: 'witness' } as const;

type Form = 'digits' | 'named' | 'led' | 'typed';

interface Utterance {
  readonly lead: Lead;
  /** Of which stud it is said to be; `called` is the one that is wanted. */
  readonly stud: number | 'called' | null;
  readonly form: Form;
  readonly amount: Amount;
  /** What is heard instead. */
  readonly misheard: Amount | null;
  readonly sureness: number;
  /** Whether who said it waits for what is read back, and answers by that alone. */
  readonly listens: boolean;
}

/** The words for a value. Only bare digits can be cut into a stud and its value in more than one way. */
function wordsFor(lead: Lead, stud: number | null, form: Form, value: string, confidence: number) {
  const led = LEADS[lead];
  if (form === 'typed')
    return typedWords(`${led}${stud === null ? '' : `${stud} `}${value}`).map((word) => ({ word, confidence: 1 }));
  if (stud !== null) return spoken(`${led}stud ${spelled(`${stud}`)} at ${spelled(value)}`, confidence);
  return spoken(`${led}${form === 'led' ? "it's " : ''}${spelled(value)}`, confidence);
}

const sayValue = (utterance: Utterance): Command =>
  command(async (told, loop, print) => {
    const { lead, form, sureness, misheard, listens } = utterance;
    const model = told.now;
    const wanted = pending(model)?.call.stud ?? calledIn(model)?.stud ?? 1;
    const stud = utterance.stud === 'called' ? wanted : utterance.stud;
    const meant = utterance.amount(model);
    const value = misheard?.(model) ?? meant;
    const words = wordsFor(lead, stud, form, value, sureness);
    const slip = value === meant ? '' : `, meant ${meant}`;
    print(`"${words.map(({ word }) => word).join(' ')}" (${words[0]?.confidence ?? 1}${slip})`);

    await meet(told, loop, async () => {
      const meaning = await loop.hear(words);
      if (meaning === null)
        return expectIdle(model, wordFor(lead, { stud, text: value, isDoubted: false, isAlike: false }));
      if (meaning.kind === 'unclear') {
        const isPlain = stud !== null || form === 'led' || form === 'typed';
        expect(isPlain && (words[0]?.confidence ?? 1) > SURENESS.unsure, 'it is plain what was said').toBe(false);
        return NOT_UNDERSTOOD;
      }
      if (meaning.kind !== KINDS[lead]) throw new Error(`It was understood as "${meaning.kind}".`);
      const [doubt] = 'doubts' in meaning ? (meaning.doubts ?? []) : [];
      const [isDoubted, isAlike] = [doubt !== undefined, doubt === 'sounds like another'];
      const { fastener, value: text } = meaning.reading;
      if (stud !== null || form !== 'digits') expect(`${fastener}: ${text}`).toBe(`${stud}: ${value}`);
      else if (lead === 'value' && isOnScale(callOfValue(model), value)) expect(text).toBe(value);
      // What no scale shows may be a stud and its value: then all that was said is in the two, and nothing besides.
      else expect(value).toMatch(new RegExp(`^${fastener ?? ''}0*${text.replace('.', '[.]')}$`));
      return wordFor(lead, { stud: fastener, text, isDoubted, isAlike });
    });

    if (!listens || told.now.taken.length === model.taken.length) return;
    const heardBack = readBackIn(loop.turns.at(-1)?.said ?? '');
    if (heardBack === null) return;
    told.meant.set(model.taken.length, meant);
    const isRight = heardBack.value === meant && heardBack.stud === wanted;
    print(`→ ${heardBack.stud}: ${heardBack.value}, "${isRight ? 'affirm' : 'negative'}"`);
    await sayPlain(told, loop, isRight ? 'affirm' : 'negative', SURENESS.sure);
  });

const isOnScale = (call: Call | null, value: string): boolean => {
  const [first = 0, last = 0] = call?.scale ?? [];
  return torqueOf(value) >= first && torqueOf(value) <= last;
};

const wordFor = (word: Lead, said: Omit<Said<'value'>, 'word'>): Word => ({ word, ...said });

const misheard = fc.oneof(
  { weight: 3, arbitrary: fc.constant(null) },
  { weight: 1, arbitrary: fc.oneof(anything, fc.constantFrom(1, -1, 10).map(beside)) },
);
const stud = fc.oneof(
  { weight: 5, arbitrary: fc.constant(null) },
  { weight: 4, arbitrary: fc.constant('called' as const) },
  { weight: 1, arbitrary: fc.integer({ min: 1, max: 11 }) },
);
const form = fc.constantFrom<Form>('digits', 'led', 'typed');
const how = { stud, form, misheard, sureness, listens: fc.boolean() };

export const value: fc.Arbitrary<Command> = fc
  .record({ ...how, lead: fc.constant('value' as const), amount })
  .map(sayValue);
export const correction: fc.Arbitrary<Command> = fc
  .record({ ...how, lead: fc.constant('correction' as const), amount })
  .map(sayValue);
export const witness: fc.Arbitrary<Command> = fc
  .record({ ...how, lead: fc.constant('witness' as const), amount: witnessed, misheard: fc.constant(null) })
  .map(sayValue);

/** The tool clicked at what it was set to. */
export const click: fc.Arbitrary<Command> = fc
  .record({ stud, by: fc.constantFrom('voice', 'touch'), sureness })
  .map(({ stud: of, by, sureness }) =>
    command((told, loop, print) => {
      const stud = of === 'called' ? (calledIn(told.now)?.stud ?? 1) : of;
      const line = stud === null ? 'click' : `stud ${spelled(`${stud}`)} click`;
      print(by === 'touch' ? `[${line}]` : `"${line}" (${sureness})`);
      return meet(told, loop, async () => {
        if (by === 'touch') {
          await loop.act({ kind: 'click', fastener: stud }, 'touch');
          return { word: 'click', stud };
        }
        const meaning = await loop.hear(spoken(line, sureness));
        if (sureness < SURENESS.sure) {
          expect(meaning).toBeNull();
          return NOT_UNDERSTOOD;
        }
        if (meaning === null) return expectIdle(told.now, { word: 'click', stud });
        expect(meaning).toEqual({ kind: 'click', fastener: stud });
        return { word: 'click', stud };
      });
    }),
  );
