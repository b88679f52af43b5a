/**
 * A mechanic who reads a torque tool and says what it shows until it is logged. What is heard goes through the real language
 * and session rooms, and what they announce is all that the mechanic goes by.
 */
import { readNumber, sayNumber } from '../../src/language/numbers/index.ts';
import { count, labelOf, sentence } from '../../src/language/say.ts';
import { situationOf } from '../../src/language/situation.ts';
import { understand, type HeardWord } from '../../src/language/understand.ts';
import type { Doubt, ReadingDoubt } from '../../src/session/intent.ts';
import { currentCall, currentStep, pendingReading } from '../../src/session/state.ts';
import { spoken } from '../language/spoken.ts';
import { happened, refused, tell, type Play } from '../session/play.ts';
import type { Random, Recogniser } from './simulated-recogniser.ts';

export interface Mechanic {
  readonly random: Random;
  readonly hear: Recogniser;
  /** How often a wrong read-back is taken for the right one, 0 to 1. */
  readonly lapse: number;
  /** Digit by digit, or below one hundred as people say it, "twenty four point five". No one was recorded saying hundreds. */
  readonly style: 'digits' | 'natural';
}

/** What was asked at the first try, beyond the usual read-back. */
export type Asked = ReadingDoubt | Doubt | 'no answer' | 'refused';

/** What became of one reading. Values are decimal text in the unit of the tool. */
export interface Outcome {
  /** What was said and heard, turn by turn: "two four ~ two nine". */
  readonly trail: readonly string[];
  /** Whether every word was heard as it was said, in one piece, the first time. */
  readonly heardRight: boolean;
  readonly asked: Asked | null;
  /** What would have been logged if the first understood reading were; null where none was. */
  readonly firstUnderstood: string | null;
  /** What was read back and confirmed; null where the mechanic had to take the keys. */
  readonly logged: string | null;
}

/** After as many turns the mechanic takes the keys. */
const PATIENCE = 15;

/**
 * One reading, from the value on the tool to its place in the record.
 * @param from a fastener is called, and its value is a reading
 * @param value what the tool shows, as decimal text
 */
export function report(from: Play, value: string, { random, hear, lapse, style }: Mechanic): Outcome {
  const { label, fastener } = calledIn(from);
  const digits = sayNumber(value, 'digits');
  const inFull = ['number', ...count(fastener).split(' '), 'at', ...digits];
  const trail: string[] = [];
  const say = (play: Play, words: readonly string[]): Reply => {
    const heard = hear(words);
    trail.push(`${words.join(' ')} ~ ${heard.map(textOf).join(' | ')}`);
    return answerTo(play, heard);
  };

  let words: readonly string[] = sayNumber(value, Number(value) < 100 ? style : 'digits');
  let reply = say(from, words);
  const first = { heardRight: trail[0] === `${words.join(' ')} ~ ${words.join(' ')}`, asked: askedBy(reply) };
  let firstUnderstood: string | null = null;
  let matches = false;
  while (trail.length < PATIENCE && reply.play.state.at === from.state.at) {
    const { play, text } = reply;
    if (text !== '') {
      const readBack = readBackIn(text, sentence(`${label} ${count(fastener)}`));
      if (readBack !== null) matches = readBack === Number(value) || random() < lapse;
      if (pendingReading(play.state) === null) words = wantsAllSaid(text) ? inFull : digits;
      else if (!matches) words = random() < 0.5 ? ['negative'] : ['correction', ...digits];
      else words = asksForValue(text) ? digits : ['affirm'];
    }
    // Who gets no answer says the same again.
    firstUnderstood ??= reply.captured;
    reply = say(play, words);
    if (reply.confirmed !== null) return { trail, ...first, firstUnderstood, logged: reply.confirmed };
  }
  return { trail, ...first, firstUnderstood, logged: null };
}

function calledIn({ state }: Play): { readonly label: string; readonly fastener: number } {
  const [step, call] = [currentStep(state), currentCall(state)];
  if (!step || !call) throw new Error('No fastener is called.');
  return { label: labelOf(state, step.id), fastener: call.fastener };
}

/** What follows from one turn of the mechanic. */
interface Reply {
  readonly play: Play;
  /** What is spoken; '' where nothing is. */
  readonly text: string;
  readonly isUnderstood: boolean;
  /** The value that was read back or confirmed. */
  readonly captured: string | null;
  readonly confirmed: string | null;
}

const silent = (play: Play): Reply => ({ play, text: '', isUnderstood: false, captured: null, confirmed: null });

/** The answer to the first part that means anything: while it is spoken, the ear is closed to what is left. */
const answerTo = (play: Play, heard: readonly (readonly HeardWord[])[]): Reply =>
  heard.map((words) => answerToOne(play, words)).find(({ text }) => text !== '') ?? silent(play);

/** The rooms are pure: the same words at the same moment have the same answer, and readings that begin alike are many. */
const known = new WeakMap<Play, Map<string, Reply>>();

function answerToOne(play: Play, words: readonly HeardWord[]): Reply {
  const answers = known.get(play) ?? new Map<string, Reply>();
  known.set(play, answers);
  const key = words.map(({ word, confidence }) => `${word} ${confidence}`).join(' ');
  const answer = answers.get(key) ?? answerAfresh(play, words);
  answers.set(key, answer);
  return answer;
}

function answerAfresh(play: Play, words: readonly HeardWord[]): Reply {
  const understanding = understand(words, situationOf(play.state));
  if (understanding.kind === 'nothing') return { ...silent(play), text: understanding.ask ?? '' };
  const after = tell(play, understanding.meaning);
  const confirmed = happened(after).find((event) => event.kind === 'reading confirmed')?.of;
  return {
    play: after,
    text: spoken(after).join(' '),
    isUnderstood: true,
    captured: happened(after).find((event) => event.kind === 'reading captured')?.reading.value ?? null,
    confirmed: after.state.readings.find(({ seq }) => seq === confirmed)?.reading.value ?? null,
  };
}

function askedBy({ play, isUnderstood }: Reply): Asked | null {
  if (!isUnderstood) return 'no answer';
  const reason = refused(play);
  if (reason) return reason.code === 'unclear' ? reason.doubt : 'refused';
  const [event] = happened(play);
  return event?.kind === 'reading captured' ? (event.doubts?.[0] ?? null) : 'refused';
}

/** The number that is read back, as it is heard; null where none is. */
function readBackIn(text: string, named: string): number | null {
  const [, words] = new RegExp(`${named}, (?:running torque )?([a-z ]+)\\.`).exec(text) ?? [];
  const [number] = readNumber(words?.split(' ') ?? []);
  return number ? Number(number.digits) : null;
}

/** A doubt is answered by the value; the usual question, or the request for an answer, by a word. */
const asksForValue = (text: string): boolean => /What does (?:it|the tool) show\?$|digit by digit\.$/.test(text);

const wantsAllSaid = (text: string): boolean => text.includes('its number, at, and the value');

const textOf = (words: readonly HeardWord[]): string => words.map(({ word }) => word).join(' ');
